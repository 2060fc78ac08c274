// The colours of the style sheet, for the canvases.

const palette = {
  colours: {},
  /** How much of the colour of a move that is still to come covers what lies under it. */
  ahead: 1,

  read() {
    const style = getComputedStyle(document.documentElement);
    for (const name of ['ground', 'ink', 'faint', 'line', 'rapid', 'feed', 'contact', 'contact-text', 'stock', 'cut', 'clamp', 'support', 'tool', 'tool-edge', 'accent'])
      this.colours[name] = style.getPropertyValue(`--${name}`).trim();
    this.ahead = Number(style.getPropertyValue('--ahead'));
  },

  /** Black on white, whatever the screen shows. */
  forPaper() {
    for (const name of Object.keys(this.colours)) this.colours[name] = '#000000';
    Object.assign(this.colours, { ground: '#ffffff', stock: '#f2f2f2', cut: '#cfcfcf', tool: '#dddddd', line: '#777777', support: '#555555', faint: '#333333' });
  },
};
