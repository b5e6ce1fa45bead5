// Pictures of the app for whoever looks it over: each place at a phone's and a desk's size, light and dark.
//   .ci/with-tools node tests/journeys/look.mjs FOLDER [PLACE…]      PLACE is what stands behind the address, such as "#rain"
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { DESK, PHONE, openBrowser, openHost, startApp } from './stage.mjs';

const [folder, ...places] = process.argv.slice(2);
if (!folder) {
  console.error('node tests/journeys/look.mjs FOLDER [PLACE…]');
  process.exit(2);
}
mkdirSync(folder, { recursive: true });

// Stands in for a test: what is opened is closed at the end.
let close = async () => {};
const ending = { after: (closing) => (close = closing) };
try {
  const host = await openHost(ending);
  for (const [size, look] of Object.entries({ phone: PHONE, desk: DESK })) {
    for (const colorScheme of ['light', 'dark']) {
      const browser = await openBrowser(ending, { look: { ...look, colorScheme } });
      for (const place of places.length ? places : ['']) {
        const page = await startApp(browser, host.address(`/${place}`));
        await page.waitForTimeout(300);
        const name = `${place.replace(/[^a-z0-9]+/gi, '-').replace(/^-|-$/g, '') || 'start'}-${size}-${colorScheme}.png`;
        await page.screenshot({ path: join(folder, name) });
        console.log(join(folder, name), page.problems.join('; '));
        await page.close();
      }
    }
  }
} finally {
  await close();
}
