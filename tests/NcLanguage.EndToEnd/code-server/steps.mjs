// What a person does in the workbench, one function each. Lines and columns count from 1. A machine under load is slow, and a key pressed while
// the workbench is busy may come to nothing: whatever is looked for is asked for again until it is there.
export const wait = 90_000;

/** How long one try may take before the next. */
const soon = 3_000;

const isThere = async (locator) => (await locator.count()) > 0 && locator.first().isVisible().catch(() => false);

/** Presses keys, again and again, until something holds. */
export async function pressUntil(page, keys, holds) {
  for (const end = Date.now() + wait; Date.now() < end;) {
    await page.keyboard.press(keys);
    for (const next = Date.now() + soon; Date.now() < next; await page.waitForTimeout(50)) if (await holds()) return;
  }
  throw new Error(`${keys} brought nothing in ${wait / 1000} s`);
}

/** Opens the quick input by these keys, writes into it until the row in hand is the wanted one (null: none is needed), and takes it. */
async function quickInput(page, keys, text, row) {
  const input = page.locator('.quick-input-widget:visible input');
  await pressUntil(page, keys, () => isThere(input));
  const inHand = page.locator('.quick-input-list .monaco-list-row.focused', { hasText: row ?? '' }).first();
  for (const end = Date.now() + wait; ;) {
    await input.fill(text);
    if (row === null || (await inHand.waitFor({ timeout: soon }).then(() => true, () => false))) break;
    if (Date.now() > end) throw new Error(`"${row}" is not offered for "${text}"`);
    // What is offered is looked up once for each text.
    await input.fill(text.slice(0, 1));
  }
  // What was taken may ask for more by the same input, which then stands empty.
  await pressUntil(page, 'Enter', async () => !(await isThere(input)) || (await input.inputValue({ timeout: 1000 }).catch(() => '')) !== text);
}

/** The part of the picture where a line's text stands: the row of its line number, as one reads it. */
async function row(page, line) {
  return page.waitForFunction((wanted) => {
    const editor = document.querySelector('.editor-instance .monaco-editor');
    const number = [...(editor?.querySelectorAll('.margin .line-numbers') ?? [])].find((n) => n.textContent.trim() === String(wanted));
    if (!number) return false;
    const top = number.getBoundingClientRect().top;
    return [...editor.querySelectorAll('.view-line')].find((l) => Math.abs(l.getBoundingClientRect().top - top) < 3) ?? false;
  }, line, { timeout: wait });
}

/** The text of a row with ordinary spaces; hints shown inside the line are part of it. */
const textOf = (element) => element.evaluate((e) => e.textContent.replaceAll('\u00a0', ' ').replaceAll('\u200c', ''));

/** Puts the cursor there through the editor's own "go to line", which also brings the line into view. */
export async function goTo(page, line, column) {
  await page.keyboard.press('Escape');
  const there = async () => Number(await page.locator('.editor-instance .line-numbers.active-line-number').first().innerText({ timeout: 1000 }).catch(() => NaN)) === line;
  for (const end = Date.now() + wait; Date.now() < end;) {
    // The first editor group gets the keys, wherever they went before.
    await pressUntil(page, 'Control+1', () => isThere(page.locator('.editor-instance .monaco-editor.focused')));
    await quickInput(page, 'Control+g', `:${line}:${column}`, null);
    for (const next = Date.now() + soon; Date.now() < next; await page.waitForTimeout(50)) if (await there()) return;
  }
  throw new Error(`the cursor does not come to line ${line}`);
}

/** Centre of a piece of text in a line, in page coordinates. */
async function place(page, line, text) {
  const found = await until(page, () => look(page, line, text), ({ all }) => all === undefined);
  if (found.all !== undefined) throw new Error(`line ${line} shows "${found.all}", in which "${text}" is not found`);
  return found;
}

/** That centre, or all that the line shows where the text is not in it (yet). */
async function look(page, line, text) {
  const element = await row(page, line);
  return element.evaluate((e, wanted) => {
    const walker = document.createTreeWalker(e, NodeFilter.SHOW_TEXT);
    const nodes = [];
    let all = '';
    while (walker.nextNode()) {
      nodes.push([all.length, walker.currentNode]);
      all += walker.currentNode.data.replaceAll('\u00a0', ' ');
    }
    const at = all.indexOf(wanted);
    if (at < 0) return { all };
    const nodeAt = (offset) => nodes.filter(([start]) => start <= offset).at(-1);
    const [startOffset, startNode] = nodeAt(at);
    const [endOffset, endNode] = nodeAt(at + wanted.length - 1);
    const range = document.createRange();
    range.setStart(startNode, at - startOffset);
    range.setEnd(endNode, at + wanted.length - endOffset);
    const box = range.getBoundingClientRect();
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  }, text);
}

/** Runs a command by its title, as the palette offers it. */
export async function command(page, title) {
  await quickInput(page, 'F1', `>${title}`, title);
}

/** Waits until a reading is as wanted, and gives what was read last. */
export async function until(page, read, isWanted) {
  let last;
  for (const end = Date.now() + wait; Date.now() < end; await page.waitForTimeout(100)) {
    last = await read();
    if (isWanted(last)) return last;
  }
  return last;
}

export const steps = {
  /** Waits for an underlined place of a severity (error, warning, info) in a line, and counts those in view. */
  async squiggle(page, seen, { severity, line }) {
    await goTo(page, line, 1);
    await row(page, line);
    await page.waitForFunction(([kind, wanted]) => {
      const top = (element) => element.getBoundingClientRect().top;
      const number = [...document.querySelectorAll('.editor-instance .margin .line-numbers')].find((n) => n.textContent.trim() === String(wanted));
      return number && [...document.querySelectorAll(`.monaco-editor .squiggly-${kind}`)].some((s) => Math.abs(top(s) - top(number)) < 12);
    }, [severity, line], { timeout: wait });
    seen.squiggles = await page.locator(`.monaco-editor .squiggly-${severity}`).count();
  },

  /** Rests the mouse on a piece of text and reads the box that appears, once it says what is waited for: findings and the server's words come one after
   *  the other. */
  async hover(page, seen, { line, text, says }) {
    await goTo(page, line, 1);
    const at = await place(page, line, text);
    const box = page.locator('.monaco-hover:not(.hidden) .hover-contents').first();
    // A hover needs a movement, not only a place, and comes to nothing where whoever answers is still starting.
    await until(page, async () => {
      await page.mouse.move(at.x + 40, at.y + 60);
      await page.mouse.move(at.x, at.y, { steps: 4 });
      return box.waitFor({ timeout: 3000 }).then(() => true, () => false);
    }, (isThere) => isThere);
    await box.waitFor({ timeout: 1000 });
    const read = async () => (await page.locator('.monaco-hover:not(.hidden) .hover-contents').allInnerTexts()).join('\n');
    seen.hover = await until(page, read, (words) => !words.includes('Loading') && words.includes(says ?? ''));
  },

  /** The colours of words, as the browser computes them, by the name each is given, and that of the paper behind. The server's colours come some
   *  time after the text: those named in `differ` are read until no two are the same. */
  async colours(page, seen, { words, differ }) {
    const colour = async ({ line, text }) => {
      await goTo(page, line, 1);
      return until(page, async () => (await row(page, line)).evaluate((e, wanted) => {
        const spans = [...e.querySelectorAll('span > span')].map((s) => [s, s.textContent.replaceAll('\u00a0', ' ')]);
        const [span] = spans.find(([, t]) => t.trim() === wanted) ?? spans.find(([, t]) => t.includes(wanted)) ?? [];
        return span && getComputedStyle(span).color;
      }, text), (read) => read);
    };
    await until(page, async () => {
      seen.colours = {};
      for (const word of words) seen.colours[word.name] = await colour(word);
      return new Set(differ.map((name) => seen.colours[name])).size;
    }, (count) => count === differ.length);
    seen.paper = await page.locator('.editor-instance .monaco-editor-background').first().evaluate((e) => getComputedStyle(e).backgroundColor);
  },

  /** How far the boxes in view that a selector finds reach out of the window, in pixels. */
  async overhang(page, seen, { selector }) {
    (seen.overhang ??= []).push(...await page.locator(selector).evaluateAll((boxes) => boxes
      .map((box) => box.getBoundingClientRect())
      .filter((box) => box.width > 0 && box.height > 0)
      .map((box) => Math.max(0, -box.left, -box.top, box.right - innerWidth, box.bottom - innerHeight))));
  },

  /** Reads what a line shows, hints and all, once it shows more than its own text. */
  async hint(page, seen, { line, source }) {
    await goTo(page, line, 1);
    await row(page, line);
    const deadline = Date.now() + wait;
    do {
      seen.hint = await textOf(await row(page, line));
      if (seen.hint.replaceAll(' ', '') !== source.replaceAll(' ', '')) return;
      await page.waitForTimeout(200);
    } while (Date.now() < deadline);
  },

  /** Reads the rows of the list of problems under a name, once one of them holds the text that is waited for; a pattern of files shows those alone. */
  async problems(page, seen, { says, files, as = 'problems' }) {
    const list = page.locator('.markers-panel .monaco-list-row');
    if (!(await isThere(list))) await pressUntil(page, 'Control+Shift+m', () => isThere(page.locator('.markers-panel')));
    if (files) await page.getByPlaceholder(/^Filter \(e\.g\./).fill(files);
    await list.first().waitFor({ timeout: wait });
    // The editor's own reading of JSON comes and goes while its schema loads: what has stood for a while is what a person sees.
    const rows = page.locator('.markers-panel .monaco-list-row');
    const end = Date.now() + wait;
    await until(page, async () => (await rows.allInnerTexts()).join('\n'), (all) => all.includes(says ?? ''));
    for (let before = null, since = Date.now(); ;) {
      seen[as] = await rows.allInnerTexts();
      const now = seen[as].join('\n');
      if (now !== before) [before, since] = [now, Date.now()];
      if (Date.now() - since > 3000 || Date.now() > end) return;
      await page.waitForTimeout(200);
    }
  },

  /** Opens the menu of fixes at a place, with Control and the point, and reads it. */
  async fixMenu(page, seen, { line, column }) {
    await goTo(page, line, column);
    await pressUntil(page, 'Control+.', () => isThere(page.locator('.action-widget .monaco-list-row')));
    seen.fixes = (await page.locator('.action-widget .monaco-list-row.action').allInnerTexts()).map((t) => t.trim());
  },

  /** Takes the fix with that title from that menu. */
  async fix(page, seen, { line, column, title }) {
    // The menu is only as full as the findings that have arrived.
    await until(page, () => steps.fixMenu(page, seen, { line, column }), () => seen.fixes.includes(title));
    if (!seen.fixes.includes(title)) throw new Error(`the fix "${title}" is not offered; offered: ${seen.fixes.join(' | ')}`);
    // The first row is chosen at the start. A click is intercepted by the menu's own layer, so the keys it is.
    const inHand = page.locator('.action-widget .monaco-list-row.focused', { hasText: title });
    for (let i = 0; i < seen.fixes.length && !(await isThere(inHand)); i++) {
      await page.keyboard.press('ArrowDown');
      await page.waitForTimeout(100);
    }
    await page.keyboard.press('Enter');
    await page.waitForSelector('.tab.active.dirty', { timeout: wait });
  },

  /** Writes the file; the tab loses its mark of unsaved changes. */
  async save(page) {
    await pressUntil(page, 'Control+s', async () => !(await isThere(page.locator('.tab.active.dirty'))));
  },

  /** Whether the workbench itself says that the folder is not trusted. */
  async restrictedMode(page, seen) {
    await page.getByText('Restricted Mode').first().waitFor({ timeout: wait });
    seen.restrictedMode = true;
  },

  /** Reads the message in the corner. */
  async message(page, seen) {
    const message = page.locator('.notifications-toasts .notification-list-item-message').first();
    await message.waitFor({ timeout: wait });
    seen.message = await message.innerText();
  },

  /** Presses a button of the message, and waits for the settings page to show the setting. */
  async messageButton(page, seen, { title, setting }) {
    await page.locator('.notifications-toasts .monaco-button', { hasText: title }).first().click();
    const item = page.locator('.settings-editor .setting-item', { hasText: setting }).first();
    await item.waitFor({ timeout: wait });
    seen.setting = await item.innerText();
  },

  /** Opens a file of the folder by its name. */
  async open(page, seen, { name }) {
    await page.keyboard.press('Escape');
    await quickInput(page, 'Control+p', name, name);
    await page.waitForSelector(`.tab.active[data-resource-name="${name}"]`, { timeout: wait });
  },

  /** Reads the rows of the outline, as far as they are in view, once one of them holds the text. */
  async outline(page, seen, { text }) {
    await command(page, 'Focus on Outline View');
    const read = async () => (await page.locator('.outline-tree .monaco-list-row').allInnerTexts()).map((t) => t.replaceAll(/\s+/g, ' ').trim());
    seen.outline = await until(page, read, (rows) => rows.some((t) => t.includes(text)));
  },

  /** Asks for completion at a place and reads what is offered first. */
  async complete(page, seen, { line, column }) {
    await goTo(page, line, column);
    await pressUntil(page, 'Control+Space', () => isThere(page.locator('.suggest-widget.visible .monaco-list-row')));
    seen.completions = await page.locator('.suggest-widget.visible .monaco-list-row .label-name').allInnerTexts();
  },

  /** Types at a place. */
  async type(page, seen, { line, column, text }) {
    await goTo(page, line, column);
    await page.keyboard.type(text);
  },

  /** Types, asks for completion there, takes the row with that label by Tab, and keeps what the row said beside it. */
  async accept(page, seen, { line, column, text, label }) {
    await steps.type(page, seen, { line, column, text });
    const row = page.locator('.suggest-widget.visible .monaco-list-row', { has: page.locator('.label-name', { hasText: new RegExp(`^${label}$`) }) }).first();
    // The list comes by itself while one types, or by these keys; in an open list they show or hide the details.
    await until(page, async () => {
      await page.waitForTimeout(1000);
      // A list that came up before the editor knew the answer stays empty until it is asked for again.
      if (!(await row.count())) {
        if (await page.locator('.suggest-widget.visible').count()) await page.keyboard.press('Escape');
        await page.keyboard.press('Control+Space');
        await page.waitForTimeout(500);
      }
      return row.count();
    }, (count) => count > 0);
    await row.waitFor({ timeout: wait });
    for (let i = 0; i < 40 && !(await row.getAttribute('class')).includes('focused'); i++) await page.keyboard.press('ArrowDown');
    seen.acceptedRow = await row.innerText();
    if (!(await page.locator('.suggest-details-container:visible').count())) await page.keyboard.press('Control+Space');
    const details = page.locator('.suggest-details');
    await details.waitFor({ timeout: wait });
    seen.acceptedDetail = await until(page, () => details.innerText(), (words) => words.length > label.length + 20);
    await page.keyboard.press('Tab');
    await page.waitForSelector('.suggest-widget.visible', { state: 'hidden', timeout: wait });
    await page.keyboard.press('Escape');
  },

  /** Gives the name or number at a place another. */
  async rename(page, seen, { line, column, to }) {
    await goTo(page, line, column);
    const box = page.locator('.rename-box input');
    // The key comes to nothing while the server is still reading.
    await until(page, async () => {
      await page.keyboard.press('F2');
      return box.waitFor({ timeout: 5000 }).then(() => true, () => false);
    }, (isThere) => isThere);
    seen.renamedFrom = await box.inputValue();
    await box.fill(to);
    await box.press('Enter');
    await page.waitForSelector('.tab.active.dirty', { timeout: wait });
  },

  /** Clicks the number behind a finding in a hover, and reads the page of the rule that opens. */
  async rulePage(page, seen, { line, text, code }) {
    const link = page.locator('.monaco-hover:not(.hidden) a', { hasText: code }).first();
    // The pages are written once the first finding is told; until then it has no link.
    await until(page, async () => {
      await steps.hover(page, seen, { line, text });
      return link.count();
    }, (count) => count > 0);
    await link.click();
    await page.locator('.tab', { hasText: code }).first().waitFor({ timeout: wait });
    const read = async () => {
      for (const frame of page.frames()) {
        const heading = frame.locator('.markdown-body h1');
        if (await heading.count().catch(() => 0)) return frame.locator('.markdown-body').innerText();
      }
      return '';
    };
    seen.rulePage = await until(page, read, (words) => words.length > 0);
  },

  async resize(page, seen, { width, height }) {
    await page.setViewportSize({ width, height });
  },

  /** Reads what the status bar says of the setup in use, once it holds the text. */
  async setupStatus(page, seen, { text }) {
    const item = page.locator('.statusbar-item[id="nclanguage.nclanguage.nclanguage.setup"], .statusbar-item[id*="nclanguage.setup"]').first();
    const read = () => item.evaluate((e) => `${e.textContent} ${e.getAttribute('aria-label') ?? e.querySelector('[aria-label]')?.getAttribute('aria-label') ?? ''}`, null, { timeout: 1000 }).catch(() => '');
    (seen.setupStatus ??= []).push(await until(page, read, (words) => words.includes(text)));
  },

  /** Clicks that, presses the button of the message that comes where there is one, and waits for the tab of the setup. */
  async openSetup(page, seen, { button, tab }) {
    await page.locator('.statusbar-item[id*="nclanguage.setup"]').first().click();
    if (button) await page.locator('.notifications-toasts .monaco-button', { hasText: button }).first().click();
    await page.locator(`.tab.active[data-resource-name="${tab}"]`).waitFor({ timeout: wait });
    const lines = page.locator('.editor-instance .view-line');
    seen.setupText = await until(page, async () => (await lines.allInnerTexts()).join('\n').replaceAll('\u00a0', ' '), (all) => all.includes('"units"'));
  },

  /** Opens the walkthrough and reads the titles of its steps. */
  async walkthrough(page, seen, { title }) {
    const input = page.locator('.quick-input-widget:visible input');
    const row = page.locator('.quick-input-list .monaco-list-row.focused', { hasText: title }).first();
    await command(page, 'Welcome: Open Walkthrough...');
    const found = await until(page, async () => {
      if (!(await isThere(input))) return false;
      await input.fill(title);
      return row.waitFor({ timeout: soon }).then(() => true, () => false);
    }, (there) => there);
    if (!found) throw new Error(`the walkthrough "${title}" is not offered`);
    await pressUntil(page, 'Enter', async () => !(await isThere(input)));
    const steps = page.locator('.getting-started-step .step-title');
    seen.walkthrough = await until(page, () => steps.allInnerTexts(), (all) => all.length > 0);
  },

  /** Opens a step of the walkthrough by its title; with a button, presses that and waits for the tab it opens. */
  async walkthroughStep(page, seen, { title, button, tab }) {
    const step = page.locator('.getting-started-step.expanded', { hasText: title });
    await until(page, async () => {
      if (!(await isThere(step))) await page.locator('.getting-started-step .step-title', { hasText: title }).first().click();
      return step.waitFor({ timeout: soon }).then(() => true, () => false);
    }, (open) => open);
    if (!button) return;
    await step.locator('.monaco-button', { hasText: button }).click();
    const opened = page.locator('.tab', { hasText: tab }).first();
    await opened.waitFor({ timeout: wait });
    seen.walkthroughTab = await opened.innerText();
  },

  /** Opens or closes the panel below the editor. */
  async panel(page) {
    await page.keyboard.press('Control+j');
  },

  /** Opens or closes the list of files. */
  async sideBar(page) {
    await page.keyboard.press('Control+b');
  },

  async screenshot(page, seen, { path }) {
    // What has just appeared fades in.
    await page.waitForTimeout(500);
    await page.screenshot({ path });
  },
};
