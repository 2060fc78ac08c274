// What the views show: one scale and one middle for all three, so that they stay in line.

/** The axes of a view: across the picture, up, and along the view; sign is -1 where the axis across grows to the left. */
const projections = {
  plan: { name: 'Plan', across: 0, up: 1, along: 2, sign: 1 },
  front: { name: 'Front', across: 0, up: 2, along: 1, sign: 1 },
  side: motion.projection === 'first'
    ? { name: 'Side, from the left', across: 1, up: 2, along: 0, sign: -1 }
    : { name: 'Side, from the right', across: 1, up: 2, along: 0, sign: 1 },
};

const camera = {
  middle: [0, 0, 0],
  /** Pixels of the page for 1 mm. */
  scale: 1,

  /** Puts all that there is into all views. */
  fit(views) {
    for (let axis = 0; axis < 3; axis++) this.middle[axis] = (motion.low[axis] + motion.high[axis]) / 2;
    this.scale = this.fitting(views);
  },

  /** Changes the size of the views: what stood in their middle stays there, as many times larger than all in view as it was. */
  keep(views, change) {
    const zoom = this.scale / this.fitting(views);
    change();
    this.scale = zoom * this.fitting(views);
  },

  /** The scale that puts all that there is into all views. */
  fitting(views) {
    const margin = 30;
    let scale = Infinity;
    for (const view of views) {
      const { across, up } = view.projection;
      const wide = Math.max(motion.high[across] - motion.low[across], 1);
      const tall = Math.max(motion.high[up] - motion.low[up], 1);
      scale = Math.min(scale, Math.max(view.width - 2 * margin, 20) / wide, Math.max(view.height - 2 * margin, 20) / tall);
    }
    return scale;
  },

  /** Larger or smaller about a place that stays where it is in the picture. */
  zoom(factor, projection, place) {
    const scale = Math.min(Math.max(this.scale * factor, 1e-3), 1e4);
    if (place) {
      const { across, up } = projection;
      this.middle[across] = place[0] + (this.middle[across] - place[0]) * (this.scale / scale);
      this.middle[up] = place[1] + (this.middle[up] - place[1]) * (this.scale / scale);
    }
    this.scale = scale;
  },

  /** Moves the picture by pixels of the page. */
  pan(projection, right, down) {
    this.middle[projection.across] -= (right * projection.sign) / this.scale;
    this.middle[projection.up] += down / this.scale;
  },
};
