// One view: a canvas with two pictures behind it, of what stands still and of the moves done so far. A step draws only its own moves and the tool.

/** Room that words have taken, so that none are written over each other. */
class Labels {
  #taken = new Map();

  constructor(width, height) {
    [this.width, this.height] = [width, height];
  }

  take(left, top, wide, tall) {
    if (!(left >= 0 && top >= 0 && left + wide <= this.width && top + tall <= this.height)) return false;
    const squares = [];
    for (let i = Math.floor(left / 64); i <= Math.floor((left + wide) / 64); i++)
      for (let j = Math.floor(top / 64); j <= Math.floor((top + tall) / 64); j++) squares.push(i * 10000 + j);
    for (const square of squares)
      for (const [l, t, w, h] of this.#taken.get(square) ?? []) if (left < l + w && l < left + wide && top < t + h && t < top + tall) return false;
    for (const square of squares) {
      if (!this.#taken.has(square)) this.#taken.set(square, []);
      this.#taken.get(square).push([left, top, wide, tall]);
    }
    return true;
  }
}

class View {
  /** Moves behind a kept picture that are drawn again for a step back. */
  static behind = 1000;

  constructor(id, projection) {
    this.figure = document.getElementById(`${id}-view`);
    this.canvas = this.figure.querySelector('canvas');
    this.projection = projection;
    const up = 'XYZ'[projection.up];
    const across = 'XYZ'[projection.across];
    const caption = `${projection.name}: ${across} to the ${projection.sign > 0 ? 'right' : 'left'}, ${up} up`;
    this.figure.querySelector('figcaption').textContent = caption;
    this.canvas.setAttribute('aria-label', `${caption}. What it shows is told in words beside it.`);
    // Without alpha the browser need not blend the canvas with the page.
    this.context = this.canvas.getContext('2d', { alpha: false });
    this.still = document.createElement('canvas');
    this.done = document.createElement('canvas');
    this.kept = document.createElement('canvas');
    [this.doneTo, this.keptTo, this.isStale] = [0, -1, true];
    this.resize(window.devicePixelRatio || 1);
  }

  /** Whether the canvas still has the size that it was made for. */
  hasSize(ratio) {
    const box = this.canvas.getBoundingClientRect();
    return this.ratio === ratio && Math.abs(this.width - Math.max(box.width, 40)) < 0.01 && Math.abs(this.height - Math.max(box.height, 40)) < 0.01;
  }

  /** Takes the size of its place on the page. */
  resize(ratio, box = this.canvas.getBoundingClientRect()) {
    [this.width, this.height, this.ratio] = [Math.max(box.width, 40), Math.max(box.height, 40), ratio];
    for (const canvas of [this.canvas, this.still, this.done, this.kept])
      [canvas.width, canvas.height] = [Math.round(this.width * ratio), Math.round(this.height * ratio)];
    this.isStale = true;
    this.takenBy = null;
  }

  /** The place in the picture, in pixels of the page, of a place in the axes of the view. */
  at(across, up) {
    const { sign } = this.projection;
    return [
      this.width / 2 + sign * camera.scale * (across - camera.middle[this.projection.across]),
      this.height / 2 - camera.scale * (up - camera.middle[this.projection.up]),
    ];
  }

  /** The other way round. */
  placeAt(x, y) {
    const { sign, across, up } = this.projection;
    return [camera.middle[across] + (sign * (x - this.width / 2)) / camera.scale, camera.middle[up] - (y - this.height / 2) / camera.scale];
  }

  /** A cleared picture to draw into, in pixels of the page. */
  begin(canvas) {
    const g = canvas.getContext('2d');
    g.setTransform(1, 0, 0, 1, 0, 0);
    g.clearRect(0, 0, canvas.width, canvas.height);
    return this.scaled(g);
  }

  scaled(g) {
    g.setTransform(this.ratio, 0, 0, this.ratio, 0, 0);
    g.font = '12px system-ui, sans-serif';
    return g;
  }

  drawStill() {
    const g = this.begin(this.still);
    this.labels = new Labels(this.width, this.height);
    // The caption, the scale bar and the datum have their places.
    this.labels.take(0, 0, Math.min(260, this.width), 20);
    this.labels.take(0, this.height - 30, Math.min(120, this.width), 30);
    const [datumX, datumY] = this.at(0, 0);
    this.labels.take(datumX - 7, datumY - 7, 14, 14);
    g.fillStyle = palette.colours.ground;
    g.fillRect(0, 0, this.width, this.height);
    const isPlan = this.projection.along === 2;
    if (isPlan && shown.holes) reserveHoles(this);
    const named = drawSetup(this, g);
    if (shown.ahead) drawMoves(this, g, 0, moves.count, true);
    if (shown.holes) drawHoles(this, g);
    drawDatum(this, g);
    // Contacts have the first choice of room, names the next.
    if (shown.contacts && isPlan) drawContactWords(this, g);
    for (const [place, name, isHatched] of named) drawName(this, g, place, name, isHatched);
    if (shown.holes && isPlan) drawHoleNumbers(this, g);
    drawScale(this, g);
  }

  /** Brings the picture of the moves done up to a move, which is excluded. */
  drawDone(to) {
    if (this.isStale || to < this.doneTo) {
      const g = this.begin(this.done);
      if (this.isStale || this.keptTo > to || to - this.keptTo > 2 * View.behind) {
        // A picture of a little before is kept: the next steps back need only draw what is behind it.
        const keep = Math.max(0, to - View.behind);
        const k = this.begin(this.kept);
        drawMoves(this, k, 0, keep, false);
        this.keptTo = keep;
      }
      g.drawImage(this.kept, 0, 0, this.width, this.height);
      this.doneTo = this.keptTo;
    }
    if (to > this.doneTo) drawMoves(this, this.scaled(this.done.getContext('2d')), this.doneTo, to, false);
    this.doneTo = to;
  }

  /** Draws the view. While the picture is being moved, those at hand are shown shifted, for long programs take time to draw anew. */
  draw(cursor, isMoving) {
    const g = this.context;
    g.setTransform(1, 0, 0, 1, 0, 0);
    if (isMoving && this.takenBy) {
      const { across, up, sign } = this.projection;
      const factor = camera.scale / this.takenBy.scale;
      const x = this.width / 2 + sign * camera.scale * (this.takenBy.middle[across] - camera.middle[across]);
      const y = this.height / 2 - camera.scale * (this.takenBy.middle[up] - camera.middle[up]);
      g.fillStyle = palette.colours.ground;
      g.fillRect(0, 0, this.canvas.width, this.canvas.height);
      g.setTransform(factor, 0, 0, factor, (x - (this.width / 2) * factor) * this.ratio, (y - (this.height / 2) * factor) * this.ratio);
    } else {
      if (this.isStale) this.drawStill();
      this.drawDone(cursor.endMove);
      this.isStale = false;
      this.takenBy = { scale: camera.scale, middle: [...camera.middle] };
    }
    g.drawImage(this.still, 0, 0);
    g.drawImage(this.done, 0, 0);
    this.scaled(g);
    this.drawBlock(g, cursor);
    if (shown.tool && cursor.step >= 0) drawTool(this, g, cursor.place, cursor.tool);
    // A contact is what must not be covered.
    if (shown.contacts) drawContacts(this, g);
  }

  /** The moves of the block in hand, in the colour of words and thick. */
  drawBlock(g, cursor) {
    const [from, to] = [cursor.startMove, Math.min(cursor.endMove, cursor.startMove + 5000)];
    if (from >= to) return;
    g.strokeStyle = palette.colours.ink;
    g.lineWidth = 2.4;
    g.beginPath();
    for (let move = from; move < to; move++) {
      let isDown = false;
      for (let i = path.start[move]; i < path.start[move + 1]; i++) {
        const [x, y] = this.at(path.places[i * 3 + this.projection.across], path.places[i * 3 + this.projection.up]);
        if (!(x - x + (y - y) === 0)) isDown = false;
        else if (isDown) g.lineTo(x, y);
        else {
          g.moveTo(x, y);
          isDown = true;
        }
      }
      g.setLineDash(moves.kind[move] === RAPID ? [5, 4] : []);
    }
    g.stroke();
    g.setLineDash([]);
  }
}
