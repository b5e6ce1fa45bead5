// No barrier that axe can find, at both sizes, light and dark.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { DESK, PHONE, accessibilityFindings, openBrowser, openHost, startApp } from './stage.mjs';

for (const [size, look] of Object.entries({ phone: PHONE, desk: DESK })) {
  for (const colorScheme of ['light', 'dark']) {
    test(`first start on a ${size}, ${colorScheme}`, async (t) => {
      const host = await openHost(t);
      const browser = await openBrowser(t, { look: { ...look, colorScheme } });
      const page = await startApp(browser, host.address());
      assert.deepEqual(await accessibilityFindings(page), []);
    });
  }
}
