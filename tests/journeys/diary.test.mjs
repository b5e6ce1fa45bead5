// The diary and upkeep at a phone's size: written in three taps, questioned, changed, taken out, brought back, offline.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { accessibilityFindings, freshFolder, keptOffline, openBrowser, openHost, startApp } from './stage.mjs';

const place = (page, name) => page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name });
const day = (back) => {
  const date = new Date(Date.now() - back * 86_400_000);
  return `${date.getFullYear()}-${String(date.getMonth() + 1).padStart(2, '0')}-${String(date.getDate()).padStart(2, '0')}`;
};

async function demo(page) {
  await page.getByRole('button', { name: /demo house/ }).tap();
  await place(page, 'House').waitFor();
}

// Opens a form, taps the digits and writes; `back` days ago.
async function write(page, button, digits, back = 0) {
  await page.getByRole('button', { name: button, exact: true }).tap();
  if (back) await page.getByLabel('Day', { exact: true }).fill(day(back));
  for (const digit of digits) {
    await page.getByRole('group', { name: 'Digits' }).getByRole('button', { name: digit, exact: true }).tap();
  }
  await page.getByRole('button', { name: /write it down/i }).tap();
  await page.getByText('Written into the diary.').waitFor();
}

const entries = async (page) =>
  (await page.locator('.of-day li strong').allInnerTexts()).map((text) => text.replaceAll('\u00a0', ' '));

test('days without rain that nobody wrote down are written at once, and undone at once', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await demo(page);
  await place(page, 'Diary').tap();
  await write(page, 'Write the rain', '3', 4);
  await page.getByRole('button', { name: 'Write the rain', exact: true }).tap();
  await page.getByRole('button', { name: /^No rain since .*: 0 for 4\sdays$/ }).tap();
  await page.getByText('Written into the diary.').waitFor();
  assert.deepEqual(await entries(page), [...Array(4).fill('No rain'), 'Rain: 3 mm']);
  await page.getByRole('button', { name: 'Undo' }).tap();
  await page.getByText('No rain', { exact: true }).first().waitFor({ state: 'detached' });
  assert.deepEqual(await entries(page), ['Rain: 3 mm']);
  // A page that lay open overnight knows the day at the first tap.
  const tomorrow = day(-1);
  await page.clock.setFixedTime(Date.now() + 86_400_000);
  await page.getByRole('button', { name: 'Write the rain', exact: true }).tap();
  assert.equal(await page.getByLabel('Day', { exact: true }).inputValue(), tomorrow);
  assert.deepEqual(page.problems, []);
});

test('a level takes three taps from the house; it stays, with and without a network', async (t) => {
  const profile = freshFolder(t);
  const host = await openHost(t);
  const first = await openBrowser(t, { profile });
  const page = await startApp(first, host.address());
  await demo(page);
  await page.getByRole('button', { name: 'Write the level', exact: true }).tap();
  for (const wanted of [page.getByRole('button', { name: '0', exact: true }), page.getByRole('button', { name: /write it down/i })]) {
    const { y, height } = await wanted.boundingBox();
    const bar = await page.locator('.bar').boundingBox();
    assert.ok(y > 0 && y + height <= bar.y, 'digits and button are in sight at once');
  }
  await page.getByRole('button', { name: 'Leave it' }).tap();
  await write(page, 'Write the level', '1');
  await keptOffline(page);
  await first.close();
  await host.stop();
  const second = await openBrowser(t, { profile });
  const again = await startApp(second, host.address());
  await place(again, 'Diary').tap();
  assert.deepEqual(await entries(again), ['New tank: 1 m deep']);
  await write(again, 'Write the rain', '12.5');
  assert.deepEqual(await entries(again), ['Rain: 12.5 mm', 'New tank: 1 m deep']);
  assert.deepEqual(again.problems, []);
});

test('an entry is changed, taken out and brought back; what is doubtful is questioned and written all the same', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await demo(page);
  await place(page, 'Diary').tap();
  await page.getByText('Nothing is written yet.').waitFor();
  await write(page, 'Write the level', '1.2', 3);
  await page.getByRole('button', { name: 'New tank: 1.2' }).first().tap();
  await page.getByLabel(/^Depth of water/).fill('1.1 m');
  await page.getByLabel(/^Depth of water/).press('Enter');
  await page.getByText('Written into the diary.').waitFor();
  assert.deepEqual(await entries(page), ['New tank: 1.1 m deep']);
  // The first digit on the pad takes the place of what stands there.
  await page.getByRole('button', { name: 'New tank: 1.1' }).first().tap();
  for (const key of ['1', '.', '3']) await page.locator('.pad').getByRole('button', { name: key, exact: true }).tap();
  await page.getByRole('button', { name: 'Write it down' }).tap();
  await page.getByRole('button', { name: 'New tank: 1.3' }).first().tap();
  await page.getByLabel(/^Depth of water/).fill('1.1 m');
  await page.getByLabel(/^Depth of water/).press('Enter');
  await page.getByText('Written into the diary.').waitFor();
  await page.getByRole('button', { name: /^Take out: New tank/ }).tap();
  await page.getByText('Taken out of the diary.').waitFor();
  assert.deepEqual(await entries(page), []);
  await page.getByRole('button', { name: 'Undo' }).tap();
  assert.deepEqual(await entries(page), ['New tank: 1.1 m deep']);

  await page.getByRole('button', { name: 'Write the level', exact: true }).tap();
  await page.getByText(/New tank: 1.1/).waitFor();
  // No water stands 9 m deep in a tank of 2.4 m; 110 may be centimetres.
  const button = page.getByRole('button', { name: 'Write it down' });
  await page.getByLabel(/^Depth of water/).fill('9');
  await page.getByText(/^It can be written from/).waitFor();
  assert.ok(await button.isDisabled());
  await page.getByLabel(/^Depth of water/).fill('110');
  await page.getByRole('button', { name: /^Take as 110\scm/ }).tap();
  await page.getByText('New tank: 1.1 m deep').last().waitFor();
  assert.ok(await button.isEnabled());
  await page.getByLabel(/^Depth of water/).fill('2.5');
  await page.getByText('That is above the overflow.').waitFor();
  assert.deepEqual(await accessibilityFindings(page), []);
  await page.getByRole('button', { name: 'It is right: write it down' }).tap();
  assert.deepEqual(await entries(page), ['New tank: 2.5 m deep', 'New tank: 1.1 m deep']);
  await page.getByRole('img', { name: 'Water, as read and as reckoned' }).waitFor();
  assert.deepEqual(await accessibilityFindings(page), []);
  assert.deepEqual(page.problems, []);
});

test('a job is done with a tap, comes due in the drawing, and goes out as a calendar', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await demo(page);
  await place(page, 'Upkeep').tap();
  // Folded: what was never written is a line, until it is opened.
  const unwritten = page.getByText(/^\d+ jobs not written down yet$/);
  await unwritten.tap();
  const many = Number((await unwritten.innerText()).match(/\d+/)[0]);
  await page.getByRole('group', { name: 'All of them were done about' }).getByRole('button', { name: 'a month ago' }).tap();
  await unwritten.waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Undo' }).tap();
  await page.getByText(`${many} jobs not written down yet`).waitFor();
  await page.getByRole('button', { name: 'Done today: Look over the roof: South roof' }).tap();
  // The line stays open for the next job.
  await page.getByText(`${many - 1} jobs not written down yet`).waitFor();
  await page.getByRole('button', { name: 'Done today: Look over the roof: North roof' }).waitFor();
  await page.getByRole('heading', { name: 'In good time' }).waitFor();
  await place(page, 'Diary').tap();
  await page.getByRole('button', { name: /Roof looked over, South roof/ }).first().tap();
  await page.getByLabel('Day', { exact: true }).fill(day(300));
  await page.getByRole('button', { name: /write it down/i }).tap();
  await place(page, 'House').tap();
  await page.getByRole('button', { name: '1 job is due.' }).tap();
  await page.getByRole('heading', { name: 'Due', exact: true }).waitFor();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as a calendar file' }).tap(),
  ]);
  const file = join(freshFolder(t), 'upkeep.ics');
  await download.saveAs(file);
  const text = readFileSync(file, 'utf8');
  assert.match(text, /^BEGIN:VCALENDAR\r\nVERSION:2.0\r\n/);
  assert.match(text, /SUMMARY:Look over the roof: South roof\r\n/);
  assert.deepEqual(await accessibilityFindings(page), []);
  assert.deepEqual(page.problems, []);
});
