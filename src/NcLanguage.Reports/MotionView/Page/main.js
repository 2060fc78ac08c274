// The page as a whole: draws once for each frame, runs, and talks with the editor that shows it.
//
// Messages, where the page is shown inside another (an editor's webview or a frame): { line } or { line, file }, lines counted from 0 as in the
// language server's protocol, file only for a program that is called. The page goes to the block of a line it is told, and tells the line that it
// has come to.

const page = {
  views: [],
  frame: 0,
  timer: 0,
  speaking: 0,
  /** Runs until the picture has come to rest. */
  resting: 0,
  isHeld: false,
  paper: {},
  hadReadings: false,
  host: typeof acquireVsCodeApi === 'function' ? acquireVsCodeApi() : window.parent === window ? null : { postMessage: (message) => window.parent.postMessage(message, '*') },

  begin() {
    document.getElementById('stage').className = motion.projection;
    this.shape();
    palette.read();
    this.views = [new View('front', projections.front), new View('side', projections.side), new View('plan', projections.plan)];
    camera.fit(this.views);
    byId('slider').max = steps.count;
    panels.begin();
    listen();
    // Who does not want motion gets the slow run to begin with.
    byId('speed').value = matchMedia('(prefers-reduced-motion: reduce)').matches ? '1' : '5';
    const observer = new ResizeObserver(() => this.resize());
    for (const view of this.views) observer.observe(view.figure);
    matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => this.recolour());
    window.addEventListener('beforeprint', () => this.print(true));
    window.addEventListener('afterprint', () => this.print(false));
    window.addEventListener('message', (event) => this.receive(event));
    if (this.host) {
      // The colours are the editor's, which then says where its cursor stands.
      document.querySelector('.theme').hidden = true;
      this.host.postMessage({ ready: true });
    }
    this.show(false);
  },

  /** Shares the room between the views as the work's own sides are. */
  shape() {
    const [x, y, z] = [0, 1, 2].map((axis) => Math.max(motion.high[axis] - motion.low[axis], 1));
    const share = (one, other, least, most) => Math.min(Math.max(one / (one + other), least), most);
    const across = share(x, y, 0.45, 0.7);
    const front = share(z, y, 0.35, 0.6);
    const above = motion.projection === 'first' ? front : 1 - front;
    const style = byId('stage').style;
    for (const [name, part] of [['across', across], ['beside', 1 - across], ['above', above], ['below', 1 - above]]) style.setProperty(`--${name}`, `${part * 100}fr`);
    // On a narrow page, one above the other, as parts of its width.
    for (const [name, part] of [['deep', y / x], ['tall', z / x]]) style.setProperty(`--${name}`, String(part));
    // On paper the views have a size of their own, known before the browser lays it out: all of them then have one scale. The block needs its room.
    const beside = Math.max((1 - across) * 246, 100);
    for (const [name, mm] of [['across', 246 - beside], ['beside', beside], ['above', above * 106], ['below', (1 - above) * 106]]) this.paper[name] = Math.round((mm * 96) / 25.4);
  },

  /** The size of a view on paper, in pixels of the page. */
  paperSize(view) {
    const isPlan = view.projection === projections.plan;
    const isAbove = isPlan === (motion.projection !== 'first');
    return {
      width: this.paper[view.projection === projections.side ? 'beside' : 'across'],
      height: this.paper[isAbove ? 'above' : 'below'],
    };
  },

  /** Draws when the browser next draws; several calls before that are one. */
  draw() {
    if (this.frame === 0)
      this.frame = requestAnimationFrame(() => {
        this.frame = 0;
        for (const view of this.views) view.draw(cursor, this.resting !== 0);
      });
  },

  redraw() {
    for (const view of this.views) view.isStale = true;
    this.draw();
  },

  /** After the camera has moved. */
  follow() {
    clearTimeout(this.resting);
    // A short program is drawn anew at once.
    this.resting = moves.count < 3000 ? 0 : setTimeout(() => {
      this.resting = 0;
      this.redraw();
    }, 150);
    this.redraw();
  },

  recolour() {
    palette.read();
    this.redraw();
  },

  /** After a view has got another size. Drawn at once: until the next frame the canvases would be black. */
  resize() {
    const ratio = window.devicePixelRatio || 1;
    if (this.isHeld || this.views.every((view) => view.hasSize(ratio))) return;
    camera.keep(this.views, () => {
      for (const view of this.views) view.resize(ratio);
    });
    for (const view of this.views) view.draw(cursor, false);
  },

  /** After the cursor has moved: words and picture, and word to the editor unless it came from there. */
  show(tellsEditor = true) {
    panels.show();
    this.draw();
    clearTimeout(this.speaking);
    this.speaking = setTimeout(() => panels.speak(), 250);
    if (tellsEditor && this.host && cursor.step >= 0) {
      const file = motion.files[steps.file[cursor.step]];
      this.host.postMessage({ line: steps.line[cursor.step] - 1, ...(file && { file }) });
    }
  },

  receive(event) {
    const message = event.data;
    if (event.source !== window.parent && event.source !== window && this.host === null) return;
    if (typeof message !== 'object' || message === null || !Number.isInteger(message.line)) return;
    const file = Math.max(0, message.file ? motion.files.indexOf(message.file) : 0);
    this.stop();
    cursor.goTo(this.stepAt(message.line + 1, file));
    this.show(false);
  },

  /** The first block of a line; where the line has none, that of the line above. */
  stepAt(line, file) {
    let found = -1;
    for (let step = 0; step < steps.count; step++)
      if (steps.file[step] === file && steps.line[step] <= line && (found < 0 || steps.line[step] > steps.line[found])) found = step;
    return found;
  },

  toggleRun() {
    if (this.timer !== 0) {
      this.stop();
      return;
    }
    if (cursor.step >= steps.count - 1) cursor.goTo(-1);
    byId('play').setAttribute('aria-pressed', 'true');
    byId('play-name').textContent = 'Stop';
    byId('play-sign').textContent = '❚❚';
    let due = 0;
    let last = performance.now();
    const tick = (now) => {
      due += ((now - last) / 1000) * Number(byId('speed').value);
      last = now;
      if (due >= 1) {
        cursor.goTo(cursor.step + Math.floor(due));
        due %= 1;
        this.show();
      }
      if (cursor.step >= steps.count - 1) this.stop();
      else this.timer = requestAnimationFrame(tick);
    };
    this.timer = requestAnimationFrame(tick);
  },

  stop() {
    if (this.timer === 0) return;
    cancelAnimationFrame(this.timer);
    this.timer = 0;
    byId('play').setAttribute('aria-pressed', 'false');
    byId('play-name').textContent = 'Run';
    byId('play-sign').textContent = '▶▶';
  },

  /** Paper has finer dots than a screen, and neither ground nor colour. */
  print(isBegun) {
    this.isHeld = isBegun;
    if (isBegun) palette.forPaper();
    else palette.read();
    const readings = byId('all-readings');
    if (isBegun) this.hadReadings = readings.open;
    readings.open = isBegun || this.hadReadings;
    camera.keep(this.views, () => {
      for (const view of this.views) {
        const size = isBegun ? this.paperSize(view) : null;
        Object.assign(view.canvas.style, size ? { width: `${size.width}px`, height: `${size.height}px` } : { width: '', height: '' });
        view.resize(size ? 3 : window.devicePixelRatio || 1, size ?? undefined);
      }
    });
    for (const view of this.views) view.draw(cursor, false);
  },
};

page.begin();
