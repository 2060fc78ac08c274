// The way of the tool as a row of places in the setup's frame: ends of moves, corners of bent rapids, chords of arcs.

const path = (() => {
  const chord = Math.PI / 45;
  const mostChords = 2000;
  const places = [];
  const start = new Int32Array(moves.count + 1);
  let arc = 0;
  let bend = 0;

  const push = (x, y, z) => places.push(x, y, z);

  /** Angle from the start, radius and level change evenly on the way, as the control's do. */
  function pushArc(move, shift) {
    const turned = moves.arcs.plane[arc] === 18 ? [2, 0, 1] : moves.arcs.plane[arc] === 19 ? [1, 2, 0] : [0, 1, 2];
    const [a, b, c] = turned;
    const from = move * 3;
    const a0 = moves.from[from + a] - moves.arcs.center[arc * 3 + a];
    const b0 = moves.from[from + b] - moves.arcs.center[arc * 3 + b];
    const r0 = Math.hypot(a0, b0);
    const r1 = Math.hypot(moves.to[from + a] - moves.arcs.center[arc * 3 + a], moves.to[from + b] - moves.arcs.center[arc * 3 + b]);
    const angle = moves.arcs.angle[arc];
    const begin = Math.atan2(b0, a0);
    const chords = Number.isFinite(angle) ? Math.max(1, Math.min(Math.ceil(Math.abs(angle) / chord), mostChords)) : 1;
    const place = [0, 0, 0];
    for (let i = 1; i < chords; i++) {
      const t = i / chords;
      const radius = r0 + (r1 - r0) * t;
      place[a] = moves.arcs.center[arc * 3 + a] + radius * Math.cos(begin + angle * t);
      place[b] = moves.arcs.center[arc * 3 + b] + radius * Math.sin(begin + angle * t);
      place[c] = moves.from[from + c] + (moves.to[from + c] - moves.from[from + c]) * t;
      push(place[0] + shift[0], place[1] + shift[1], place[2] + shift[2]);
    }
  }

  for (let move = 0; move < moves.count; move++) {
    start[move] = places.length / 3;
    if (!isMotion(move)) continue;
    const shift = motion.shifts[steps.shift[stepOfMove[move]]].map((value) => (value === null ? NaN : value));
    const at = move * 3;
    push(moves.from[at] + shift[0], moves.from[at + 1] + shift[1], moves.from[at + 2] + shift[2]);
    if (moves.kind[move] === ARC) {
      pushArc(move, shift);
      arc++;
    }
    for (; moves.bends.move[bend] === move; bend++) {
      const corner = moves.bends.corner;
      push(corner[bend * 3] + shift[0], corner[bend * 3 + 1] + shift[1], corner[bend * 3 + 2] + shift[2]);
    }
    push(moves.to[at] + shift[0], moves.to[at + 1] + shift[1], moves.to[at + 2] + shift[2]);
  }
  start[moves.count] = places.length / 3;
  return { start, places: Float32Array.from(places) };
})();
