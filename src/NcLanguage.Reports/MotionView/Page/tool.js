// The tool, and the marks that go with it.

/** The tool at a place, as the cylinders that clearance is reckoned with; a bare axis where the setup does not give its size. */
function drawTool(view, g, place, number) {
  const { across, up, along, sign } = view.projection;
  const [x, y] = view.at(place[across], place[up]);
  if (!(x - x + (y - y) === 0)) return;
  const tool = tools.get(number);
  const cylinders = tool ? tool.cylinders : [];
  g.strokeStyle = palette.colours['tool-edge'];
  g.fillStyle = palette.colours.tool;
  g.lineWidth = 1.4;
  if (along === 2) {
    for (const cylinder of [...cylinders].reverse()) {
      g.beginPath();
      g.arc(x, y, Math.max(cylinder.radius * camera.scale, 0.5), 0, 2 * Math.PI);
      g.globalAlpha = cylinder.part === 'holder' ? 0.15 : 0.5;
      g.fill();
      g.globalAlpha = 1;
      g.setLineDash(cylinder.part === 'holder' ? [5, 3] : []);
      g.stroke();
    }
  } else {
    for (const cylinder of cylinders) drawCylinder(view, g, x, y, cylinder, tool);
    g.beginPath();
    g.setLineDash([12, 3, 1, 3]);
    g.moveTo(x, y + 6);
    g.lineTo(x, -10);
    g.stroke();
  }
  g.setLineDash([]);
  // A small cross marks the tip, however small the tool.
  g.beginPath();
  g.moveTo(x - 5, y);
  g.lineTo(x + 5, y);
  g.moveTo(x, y - 5);
  g.lineTo(x, y + 5);
  g.stroke();
}

function drawCylinder(view, g, x, y, cylinder, tool) {
  const radius = Math.max(cylinder.radius * camera.scale, 0.5);
  const bottom = y - cylinder.bottom * camera.scale;
  // What has no upper end goes out of the picture.
  const top = cylinder.top === null ? Math.min(-10, bottom) : y - cylinder.top * camera.scale;
  g.setLineDash(cylinder.part === 'holder' ? [5, 3] : []);
  g.beginPath();
  const cone = cylinder.bottom === 0 && tool.pointAngle > 0 && tool.pointAngle < 180 ? radius / Math.tan((tool.pointAngle * Math.PI) / 360) : 0;
  if (cone > 0) {
    const shoulder = Math.max(bottom - cone, top);
    g.moveTo(x, bottom);
    g.lineTo(x + radius, shoulder);
    g.lineTo(x + radius, top);
    g.lineTo(x - radius, top);
    g.lineTo(x - radius, shoulder);
    g.closePath();
  } else g.rect(x - radius, top, 2 * radius, bottom - top);
  g.globalAlpha = cylinder.part === 'holder' ? 0.2 : 0.6;
  g.fill();
  g.globalAlpha = 1;
  g.stroke();
}

/** Whether the ring of a contact lies on a piece of the picture: what is written there could not be read. */
function isUnderContact(view, left, top, wide, tall) {
  const { across, up } = view.projection;
  return motion.contacts.some((contact) => {
    const [x, y] = view.at(contact.tip[across] ?? NaN, contact.tip[up] ?? NaN);
    return x > left - 11 && x < left + wide + 11 && y > top - 11 && y < top + tall + 11;
  });
}

/** A ring with a cross at each contact; one where many lie on one another. */
function drawContacts(view, g) {
  const { across, up } = view.projection;
  const seen = new Set();
  for (const contact of motion.contacts) {
    const [x, y] = view.at(contact.tip[across] ?? NaN, contact.tip[up] ?? NaN);
    const key = `${Math.round(x / 6)} ${Math.round(y / 6)}`;
    if (!(x - x + (y - y) === 0) || seen.has(key)) continue;
    seen.add(key);
    g.beginPath();
    g.arc(x, y, 8, 0, 2 * Math.PI);
    g.moveTo(x - 5.6, y - 5.6);
    g.lineTo(x + 5.6, y + 5.6);
    g.moveTo(x - 5.6, y + 5.6);
    g.lineTo(x + 5.6, y - 5.6);
    // A rim in the colour of the ground parts it from whatever lies under it.
    for (const [colour, width] of [['ground', 6], ['contact', 3]]) {
      g.strokeStyle = palette.colours[colour];
      g.lineWidth = width;
      g.stroke();
    }
  }
}

/** The words of contacts, in the plan, where there is room. */
function drawContactWords(view, g) {
  for (const contact of motion.contacts.slice(0, 12)) {
    const [x, y] = view.at(contact.tip[0] ?? NaN, contact.tip[1] ?? NaN);
    const text = `contact: ${contact.text}`;
    const width = g.measureText(text).width;
    for (const [left, bottom] of [[x + 12, y - 6], [x + 12, y + 16], [x - 12 - width, y - 6], [x - 12 - width, y + 16], [x - width / 2, y - 14], [x - width / 2, y + 26]]) {
      if (left < 2 || left + width > view.width || !view.labels.take(left, bottom - 11, width, 14)) continue;
      g.fillStyle = palette.colours.ground;
      g.fillRect(left - 2, bottom - 11, width + 4, 14);
      g.fillStyle = palette.colours['contact-text'];
      g.fillText(text, left, bottom);
      break;
    }
  }
}
