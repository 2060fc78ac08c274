// What a person does with the motion view in the workbench, one function each. Lines count from 1.
import { command, goTo, steps, until, wait } from './steps.mjs';

/** The line the cursor is in, by the number the editor shows as the active one: the status bar shows none while the view has the focus. */
async function cursorLine(page) {
  return Number(await page.locator('.editor-instance .line-numbers.active-line-number').first().innerText({ timeout: 1000 }).catch(() => NaN));
}

/** The frame of the motion view: a page within a page within the workbench. */
async function motionFrame(page) {
  for (const end = Date.now() + wait; Date.now() < end; await page.waitForTimeout(100)) {
    for (const frame of page.frames()) {
      if (await frame.locator('#slider').count().catch(() => 0)) return frame;
    }
  }
  throw new Error(`no motion view; frames: ${page.frames().map((frame) => frame.url()).join(' | ')}`);
}

export const motionSteps = {
  /** Opens the motion view, and reads the block that it has in hand. */
  async motionView(page, seen) {
    await command(page, 'NC: Show the Motion of the Program');
    const frame = await motionFrame(page);
    seen.motionTab = await page.locator('.tab', { hasText: 'Motion' }).first().innerText();
    seen.motionLine = await frame.locator('#line').innerText();
  },

  /** Puts the editor's cursor into a line and reads the block that the view then has in hand. */
  async motionFollows(page, seen, { line, text }) {
    await goTo(page, line, 1);
    const frame = await motionFrame(page);
    seen.motionFollowed = await until(page, () => frame.locator('#line').innerText(), (words) => words.includes(text));
  },

  /** Goes one block on in the view, and reads where the editor's cursor then is. */
  async motionLeads(page, seen, { line }) {
    const frame = await motionFrame(page);
    await frame.locator('#forward').click();
    seen.cursorLine = await until(page, () => cursorLine(page), (at) => at === line);
  },

  /** Types over a word while the view is open, and waits for the view to show the new text. */
  async motionRedraws(page, seen, { line, column, text, shown }) {
    await steps.type(page, seen, { line, column, text });
    const read = async () => (await motionFrame(page)).locator('#line').innerText().catch(() => '');
    seen.motionRedrawn = await until(page, read, (words) => words.includes(shown));
  },

  /** The ground that the view is drawn on, as the browser computes it. */
  async motionGround(page, seen) {
    seen.motionGround = await (await motionFrame(page)).evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  },
};
