// The data of the page: what MotionJson writes, with its arrays of numbers unpacked.

const motion = JSON.parse(document.getElementById('motion').textContent);
const steps = motion.steps;
const moves = motion.moves;

/** The bytes of a base64 text as an array of numbers. */
function unpack(text, Type) {
  let bytes;
  if (Uint8Array.fromBase64) {
    bytes = Uint8Array.fromBase64(text);
  } else {
    const letters = atob(text);
    bytes = new Uint8Array(letters.length);
    for (let i = 0; i < letters.length; i++) bytes[i] = letters.charCodeAt(i);
  }
  return new Type(bytes.buffer, 0, bytes.byteLength / Type.BYTES_PER_ELEMENT);
}

for (const name of ['line', 'file', 'first', 'state', 'shift']) steps[name] = unpack(steps[name], Int32Array);
moves.kind = unpack(moves.kind, Uint8Array);
for (const name of ['to', 'feed', 'seconds']) moves[name] = unpack(moves[name], Float64Array);
if (moves.clearance) {
  moves.clearance = unpack(moves.clearance, Float64Array);
  moves.obstacle = unpack(moves.obstacle, Int32Array);
}
for (const name of ['move', 'plane']) moves.arcs[name] = unpack(moves.arcs[name], Int32Array);
for (const name of ['center', 'angle']) moves.arcs[name] = unpack(moves.arcs[name], Float64Array);
moves.bends.move = unpack(moves.bends.move, Int32Array);
moves.bends.corner = unpack(moves.bends.corner, Float64Array);

const RAPID = moves.kinds.indexOf('rapid');
const FEED = moves.kinds.indexOf('feed');
const ARC = moves.kinds.indexOf('arc');

/** Where the moves of a step begin and end. */
const firstMove = (step) => steps.first[step];
const endMove = (step) => (step + 1 < steps.count ? steps.first[step + 1] : moves.count);

const startsFrom = unpack(moves.starts.from, Float64Array);

/** Where each move begins: where the one before has ended, but for those that are listed. */
moves.from = new Float64Array(moves.count * 3).fill(NaN);
moves.from.set(moves.to.subarray(0, Math.max(moves.count - 1, 0) * 3), moves.count > 0 ? 3 : 0);
unpack(moves.starts.move, Int32Array).forEach((move, i) => moves.from.set(startsFrom.subarray(i * 3, i * 3 + 3), move * 3));

/** Where the tool stands behind each step: at the end of its last move, or where it stood before, but for those that are listed. */
steps.position = new Float64Array(steps.count * 3).fill(NaN);
{
  const listed = new Map(Array.from(unpack(steps.places.step, Int32Array), (step, i) => [step, i * 3]));
  const places = unpack(steps.places.place, Float64Array);
  for (let step = 0; step < steps.count; step++) {
    if (listed.has(step)) steps.position.set(places.subarray(listed.get(step), listed.get(step) + 3), step * 3);
    else if (endMove(step) > firstMove(step)) steps.position.set(moves.to.subarray(endMove(step) * 3 - 3, endMove(step) * 3), step * 3);
    else if (step > 0) steps.position.copyWithin(step * 3, step * 3 - 3, step * 3);
  }
}

/** The step that each move belongs to. */
const stepOfMove = new Int32Array(moves.count);
for (let step = 0; step < steps.count; step++) stepOfMove.fill(step, firstMove(step), endMove(step));

/** Of each hole that is kept, in the order of the table: its step, and its last move. */
const drilled = { step: unpack(motion.drilled.step, Int32Array), move: unpack(motion.drilled.move, Int32Array) };

/** Seconds from the beginning to each move, and how many moves before it are of unknown time, which count as none. */
const secondsTo = new Float64Array(moves.count + 1);
const untimedTo = new Int32Array(moves.count + 1);
for (let i = 0; i < moves.count; i++) {
  secondsTo[i + 1] = secondsTo[i] + (moves.seconds[i] || 0);
  untimedTo[i + 1] = untimedTo[i] + (Number.isNaN(moves.seconds[i]) ? 1 : 0);
}

const isMotion = (move) => moves.kind[move] === RAPID || moves.kind[move] === FEED || moves.kind[move] === ARC;
const meets = (move) => moves.clearance !== undefined && moves.clearance[move] <= motion.contactAt;
/** False where the tool's diameter is not known: distances are then those of its bare axis. */
const isToolKnown = (number) => (tools.get(number)?.cylinders[0].radius ?? 0) > 0;
const tools = new Map(motion.tools.map((tool) => [tool.number, tool]));

/** A number as people read it, or that it is not known. */
function say(value, unit, decimals = 4) {
  if (value === null || value === undefined || Number.isNaN(value)) return 'not known';
  const rounded = String(Number(value.toFixed(decimals)) + 0);
  return unit ? `${rounded} ${unit}` : rounded;
}

/** Data are in mm; lengths are told in the unit that the program is written in, as by the trace. */
const unit = motion.isInch ? 'in' : 'mm';
const mmOfUnit = motion.isInch ? 25.4 : 1;
const inUnit = (mm) => (mm === null || mm === undefined ? mm : mm / mmOfUnit);

/** A length as a number, and with its unit: "12.5", "12.5 mm". */
const lengthText = (mm) => say(inUnit(mm), '', motion.isInch ? 4 : 3);
const sayLength = (mm, decimals = motion.isInch ? 4 : 3) => say(inUnit(mm), unit, decimals);
