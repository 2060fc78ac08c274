// Draws what stands still, and the ways of moves, into the picture of one view.

/** What is drawn, as ticked. */
const shown = { rapids: true, feeds: true, ahead: true, holes: true, clamps: true, stock: true, left: false, tool: true, contacts: true };

/** A clamp is hatched, so that it is one in black and white too. */
function hatch(g, left, top, wide, tall, round) {
  g.save();
  g.beginPath();
  if (round) g.ellipse(left + wide / 2, top + tall / 2, wide / 2, tall / 2, 0, 0, 2 * Math.PI);
  else g.rect(left, top, wide, tall);
  g.clip();
  g.beginPath();
  const gap = Math.max(8, (wide + tall) / 300);
  for (let c = Math.floor((left + top) / gap) * gap; c < left + wide + top + tall; c += gap) {
    g.moveTo(c - top, top);
    g.lineTo(c - top - tall, top + tall);
  }
  g.lineWidth = 0.8;
  g.stroke();
  g.restore();
}

function drawSolid(view, g, solid, colour, isHatched, dash) {
  const { across, up, sign } = view.projection;
  const [x1, y1] = view.at(solid.min[across], solid.min[up]);
  const [x2, y2] = view.at(solid.max[across], solid.max[up]);
  const [left, top, wide, tall] = [Math.min(x1, x2), Math.min(y1, y2), Math.abs(x2 - x1), Math.abs(y2 - y1)];
  const isRound = solid.diameter !== undefined && view.projection.along === 2;
  g.strokeStyle = colour;
  if (isHatched) hatch(g, left, top, wide, tall, isRound);
  g.lineWidth = isHatched ? 1.6 : 1;
  g.setLineDash(dash);
  g.beginPath();
  if (isRound) g.ellipse(left + wide / 2, top + tall / 2, wide / 2, tall / 2, 0, 0, 2 * Math.PI);
  else g.rect(left, top, wide, tall);
  g.stroke();
  g.setLineDash([]);
  return [left, top, wide, tall];
}

/** A name upon what bears it, or beside it; left out where there is no room. */
function drawName(view, g, [left, top, wide, tall], name, isHatched) {
  const width = g.measureText(name).width;
  const middle = left + (wide - width) / 2;
  const [y0, isRoomy] = [top + tall / 2 + 4, tall > 16];
  const places = [[middle, y0, isRoomy && width + 4 < wide], [left + 4, y0, isRoomy && width + 8 < wide], [left + wide - width - 4, y0, isRoomy && width + 8 < wide]];
  // Beside a support there is the stock, or the next support.
  if (isHatched) places.push([middle, top - 4, true]);
  if (isHatched || view.projection.along !== 2) places.push([middle, top + tall + 14, true]);
  // Where a contact lies at the upper edge, above its ring.
  if (isHatched) places.push([middle, top - 18, true]);
  for (const [x, y, isFit] of places) {
    if (!isFit || (shown.contacts && isUnderContact(view, x, y - 11, width, 14)) || !view.labels.take(x - 2, y - 12, width + 4, 15)) continue;
    if (isHatched) {
      g.fillStyle = palette.colours.ground;
      g.fillRect(x - 2, y - 11, width + 4, 14);
    }
    g.fillStyle = palette.colours.ink;
    g.fillText(name, x, y);
    return;
  }
}

/** Where the stock is open already: from above with its floor, from the front and the side as hidden edges. */
function drawHollows(view, g, [left, top, wide, tall]) {
  const { across, up, along } = view.projection;
  g.save();
  g.beginPath();
  g.rect(left, top, wide, tall);
  g.clip();
  for (const hollow of motion.stock.hollows) {
    const isThrough = hollow.min[2] <= motion.stock.min[2];
    const [x1, y1] = view.at(hollow.min[across], hollow.min[up]);
    const [x2, y2] = view.at(hollow.max[across], hollow.max[up]);
    const [from, to, high, low] = [Math.min(x1, x2), Math.max(x1, x2), Math.min(y1, y2), Math.max(y1, y2)];
    g.beginPath();
    if (along === 2) {
      const round = Math.min(hollow.cornerRadius * camera.scale, (to - from) / 2, (low - high) / 2);
      g.moveTo(from + round, high);
      g.arcTo(to, high, to, low, round);
      g.arcTo(to, low, from, low, round);
      g.arcTo(from, low, from, high, round);
      g.arcTo(from, high, to, high, round);
      g.closePath();
      g.fillStyle = isThrough ? palette.colours.ground : palette.colours.cut;
      g.fill();
      g.strokeStyle = palette.colours.ink;
      g.lineWidth = 1.2;
    } else {
      g.moveTo(from, high);
      g.lineTo(from, low);
      if (isThrough) g.moveTo(to, low);
      else g.lineTo(to, low);
      g.lineTo(to, high);
      g.strokeStyle = palette.colours.faint;
      g.lineWidth = 1;
      g.setLineDash([6, 3]);
    }
    g.stroke();
    g.setLineDash([]);
  }
  g.restore();
}

/** Stock, supports and clamps; gives what is to be named, and where. */
function drawSetup(view, g) {
  const { across, up, along } = view.projection;
  if (motion.stock && shown.stock) {
    const [x1, y1] = view.at(motion.stock.min[across], motion.stock.min[up]);
    const [x2, y2] = view.at(motion.stock.max[across], motion.stock.max[up]);
    g.fillStyle = palette.colours.stock;
    g.fillRect(Math.min(x1, x2), Math.min(y1, y2), Math.abs(x2 - x1), Math.abs(y2 - y1));
    g.strokeStyle = palette.colours.ink;
    g.lineWidth = 1.6;
    g.strokeRect(Math.min(x1, x2), Math.min(y1, y2), Math.abs(x2 - x1), Math.abs(y2 - y1));
    drawHollows(view, g, [Math.min(x1, x2), Math.min(y1, y2), Math.abs(x2 - x1), Math.abs(y2 - y1)]);
  }
  if (motion.left && shown.left) drawLeft(view, g);
  if (!shown.clamps) return [];
  // In the plan supports lie under the stock, and their edges are hidden; elsewhere they are outlines of what is no part of the work.
  const dash = along === 2 ? [6, 3] : [14, 3, 2, 3, 2, 3];
  const named = motion.supports.map((solid) => [drawSolid(view, g, solid, palette.colours.support, false, dash), solid.name, false]);
  for (const solid of motion.obstacles) named.push([drawSolid(view, g, solid, palette.colours.clamp, true, []), solid.name, true]);
  return named.reverse();
}

function drawDatum(view, g) {
  const [x, y] = view.at(0, 0);
  g.strokeStyle = g.fillStyle = palette.colours.ink;
  g.lineWidth = 1;
  g.beginPath();
  g.moveTo(x - 13, y);
  g.lineTo(x + 13, y);
  g.moveTo(x, y - 13);
  g.lineTo(x, y + 13);
  g.stroke();
  for (const [from, to] of [[-Math.PI / 2, 0], [Math.PI / 2, Math.PI]]) {
    g.beginPath();
    g.moveTo(x, y);
    g.arc(x, y, 6, from, to);
    g.fill();
  }
  g.beginPath();
  g.arc(x, y, 6, 0, 2 * Math.PI);
  g.stroke();
}

function drawHoles(view, g) {
  const { across, along } = view.projection;
  g.strokeStyle = g.fillStyle = palette.colours.ink;
  g.lineWidth = 1;
  const seen = new Set();
  g.beginPath();
  for (const hole of motion.holePlaces) {
    if (along !== 2) {
      if (hole.top === null || hole.bottom === null) continue;
      const [x, top] = view.at(across === 0 ? hole.x : hole.y, hole.top);
      // Holes behind one another have one axis.
      if (seen.has(Math.round(x * 2))) continue;
      seen.add(Math.round(x * 2));
      g.moveTo(x, top - 4);
      g.lineTo(x, view.at(0, hole.bottom)[1] + 4);
      continue;
    }
    const [x, y] = view.at(hole.x, hole.y);
    if (x < -50 || y < -50 || x > view.width + 50 || y > view.height + 50) continue;
    const radius = ((hole.diameter ?? 0) / 2) * camera.scale;
    const reach = Math.max(radius, 2) + 3;
    g.moveTo(x - reach, y);
    g.lineTo(x + reach, y);
    g.moveTo(x, y - reach);
    g.lineTo(x, y + reach);
    if (radius > 0) {
      g.moveTo(x + radius, y);
      g.arc(x, y, radius, 0, 2 * Math.PI);
    }
  }
  if (along !== 2) g.setLineDash([12, 3, 1, 3]);
  g.stroke();
  g.setLineDash([]);
}

/** The room that circles of holes take, before any words are put down. */
function reserveHoles(view) {
  for (const hole of motion.holePlaces) {
    const [x, y] = view.at(hole.x, hole.y);
    const reach = Math.max(((hole.diameter ?? 0) / 2) * camera.scale * 0.7, 2);
    view.labels.take(x - reach, y - reach, 2 * reach, 2 * reach);
  }
}

function drawHoleNumbers(view, g) {
  g.fillStyle = palette.colours.ink;
  for (const hole of motion.holePlaces) {
    const [x, y] = view.at(hole.x, hole.y);
    if (x < 0 || y < 0 || x > view.width || y > view.height) continue;
    const off = Math.max(((hole.diameter ?? 0) / 2) * camera.scale * 0.7, 2) + 2;
    const width = g.measureText(hole.label).width;
    for (const [left, bottom] of [[x + off, y - off], [x + off, y + off + 10], [x - off - width, y - off], [x - off - width, y + off + 10]]) {
      if (!view.labels.take(left, bottom - 10, width, 12)) continue;
      g.fillText(hole.label, left, bottom);
      break;
    }
  }
}

/** A bar of a round length in the lower corner. */
function drawScale(view, g) {
  const longest = inUnit(view.width / 4 / camera.scale);
  const ten = 10 ** Math.floor(Math.log10(longest));
  const length = longest >= 5 * ten ? 5 * ten : longest >= 2 * ten ? 2 * ten : ten;
  const wide = length * mmOfUnit * camera.scale;
  const [x, y] = [10, view.height - 10];
  g.strokeStyle = g.fillStyle = palette.colours.ink;
  g.lineWidth = 1;
  g.strokeRect(x + 0.5, y - 3.5, wide, 4);
  g.fillRect(x + 0.5, y - 3.5, wide / 2, 4);
  g.fillText(say(length, unit, 6), x, y - 7);
}

/**
 * The ways of moves from one to another, the latter excluded: rapids dashed, feeds whole, contacts thick; those ahead narrow and paler. Of a long stretch, what is shorter than half a
 * pixel is drawn with what follows, and what would be drawn upon itself is drawn once.
 */
function drawMoves(view, g, from, to, isAhead) {
  if (from >= to) return;
  const ways = [new Path2D(), new Path2D(), new Path2D()];
  const drawn = to - from > 2000 ? new Set() : null;
  const { start, places } = path;
  const { across, up, sign } = view.projection;
  const [wide, tall, scale] = [view.width, view.height, camera.scale];
  const x0 = wide / 2 - sign * scale * camera.middle[across];
  const y0 = tall / 2 + scale * camera.middle[up];
  let [way, penX, penY, isDown, x, y] = [-1, NaN, NaN, false, NaN, NaN];

  const line = () => {
    const isOff = (x < 0 && penX < 0) || (y < 0 && penY < 0) || (x > wide && penX > wide) || (y > tall && penY > tall);
    const key = drawn === null ? 0 : ((Math.round(penX) * 8192 + Math.round(penY)) * 8192 + Math.round(x)) * 8192 + Math.round(y);
    if (isOff || !(x - x + (y - y) === 0) || penX !== penX || penY !== penY || drawn?.has(key)) isDown = false;
    else {
      drawn?.add(key);
      if (!isDown) ways[way].moveTo(penX, penY);
      ways[way].lineTo(x, y);
      isDown = true;
    }
    [penX, penY] = [x, y];
  };

  for (let move = from; move < to; move++) {
    const isRapid = moves.kind[move] === RAPID;
    if (start[move] === start[move + 1] || !(isRapid ? shown.rapids : shown.feeds)) continue;
    const next = shown.contacts && meets(move) ? 2 : isRapid ? 0 : 1;
    const end = start[move + 1];
    for (let i = start[move]; i < end; i++) {
      const isFirst = i === start[move];
      const nextX = x0 + sign * scale * places[i * 3 + across];
      const nextY = y0 - scale * places[i * 3 + up];
      // A move that goes on where the last one of its kind has ended needs no beginning of its own.
      if (isFirst && (next !== way || !(Math.abs(nextX - x) + Math.abs(nextY - y) < 0.01))) {
        if (x !== penX || y !== penY) line();
        [way, penX, penY, isDown] = [next, nextX, nextY, false];
      }
      [x, y] = [nextX, nextY];
      if (!isFirst && !(Math.abs(x - penX) + Math.abs(y - penY) < 0.5)) line();
    }
  }
  if (way >= 0 && (x !== penX || y !== penY)) line();

  g.lineJoin = 'bevel';
  // A rim in the colour of the ground parts a contact from whatever lies under it.
  const lines = [[0, 'rapid', 1.2, [5, 4]], [1, 'feed', 2, []], [2, 'ground', 6, []], [2, 'contact', 3, []]];
  for (const [i, colour, width, dash] of lines) {
    g.globalAlpha = isAhead && i < 2 ? palette.ahead : 1;
    g.strokeStyle = palette.colours[colour];
    g.lineWidth = isAhead && i < 2 ? width / 2 : width;
    g.setLineDash(dash);
    g.stroke(ways[i]);
  }
  g.setLineDash([]);
  g.globalAlpha = 1;
}
