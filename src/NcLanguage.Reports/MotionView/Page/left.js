// What is left of the stock at the end of the run: in the plan shaded by how deep it was cut, with a line at every edge; from the front and the
// side as what still hides what is behind it.

const left = motion.left;
if (left) left.heights = unpack(left.heights, Float32Array);

const heightAt = (column, row) => left.heights[row * left.columns + column];

/** Edges lower than this, mm, are no edges but slopes, or the cells of a field that is not endlessly fine. */
const leastEdge = 0.5;

function drawLeft(view, g) {
  if (view.projection.along === 2) drawLeftFromAbove(view, g);
  else drawSilhouette(view, g);
}

function drawLeftFromAbove(view, g) {
  const top = motion.stock.max[2];
  const depth = Math.max(top - motion.stock.min[2], 1e-9);
  const wide = left.cellWidth * camera.scale;
  const tall = left.cellDepth * camera.scale;
  const [x0, y0] = view.at(motion.stock.min[0], motion.stock.min[1]);
  const place = (column, row) => [x0 + column * wide, y0 - row * tall];
  // Five shades from the top to the floor; where nothing stands, the ground.
  for (let shade = 1; shade <= 6; shade++) {
    g.beginPath();
    for (let row = 0; row < left.rows; row++)
      for (let column = 0, end; column < left.columns; column = end) {
        end = column + 1;
        if (shadeOf(heightAt(column, row)) !== shade) continue;
        while (end < left.columns && shadeOf(heightAt(end, row)) === shade) end++;
        const [x, y] = place(column, row);
        g.rect(x, y - tall, (end - column) * wide, tall + 0.4);
      }
    g.fillStyle = shade === 6 ? palette.colours.ground : palette.colours.cut;
    g.globalAlpha = shade === 6 ? 1 : shade / 5;
    g.fill();
  }
  g.globalAlpha = 1;
  g.beginPath();
  for (let row = 0; row < left.rows; row++)
    for (let column = 0; column < left.columns; column++) {
      const height = heightAt(column, row);
      const [x, y] = place(column, row);
      if (column > 0 && Math.abs(height - heightAt(column - 1, row)) > leastEdge) {
        g.moveTo(x, y);
        g.lineTo(x, y - tall);
      }
      if (row > 0 && Math.abs(height - heightAt(column, row - 1)) > leastEdge) {
        g.moveTo(x, y);
        g.lineTo(x + wide, y);
      }
    }
  g.strokeStyle = palette.colours.ink;
  g.lineWidth = 0.8;
  g.stroke();

  function shadeOf(height) {
    if (height <= left.floor) return 6;
    return height >= top ? 0 : Math.min(5, Math.ceil(((top - height) / depth) * 5));
  }
}

/** The highest of each column of cells, or of each row: the stock that was there is taken out of the picture, what is left drawn in. */
function drawSilhouette(view, g) {
  const { across, up, sign } = view.projection;
  const isFront = across === 0;
  const count = isFront ? left.columns : left.rows;
  const size = isFront ? left.cellWidth : left.cellDepth;
  const [x1, y1] = view.at(motion.stock.min[across], motion.stock.min[up]);
  const [x2, y2] = view.at(motion.stock.max[across], motion.stock.max[up]);
  g.fillStyle = palette.colours.ground;
  g.fillRect(Math.min(x1, x2) - 1, y2 - 1, Math.abs(x2 - x1) + 2, y1 - y2 + 2);
  g.strokeStyle = palette.colours.faint;
  g.lineWidth = 1;
  g.setLineDash([6, 3]);
  g.strokeRect(Math.min(x1, x2), y2, Math.abs(x2 - x1), y1 - y2);
  g.setLineDash([]);
  g.beginPath();
  g.moveTo(x1, y1);
  for (let i = 0; i < count; i++) {
    let highest = left.floor;
    for (let j = 0; j < (isFront ? left.rows : left.columns); j++) highest = Math.max(highest, isFront ? heightAt(i, j) : heightAt(j, i));
    const y = view.at(0, highest)[1];
    g.lineTo(x1 + sign * i * size * camera.scale, y);
    g.lineTo(x1 + sign * (i + 1) * size * camera.scale, y);
  }
  g.lineTo(x2, y1);
  g.closePath();
  g.fillStyle = palette.colours.stock;
  g.fill();
  g.strokeStyle = palette.colours.ink;
  g.lineWidth = 1.6;
  g.stroke();
}
