// The words of the page: the block in hand, contacts, holes, notes. Texts of the program are put in as text, never as markup.

/** Rows of the table of holes that a browser lays out at once: with 100,000 it would stand still. */
const holesAtOnce = 500;

const byId = (id) => document.getElementById(id);

function element(name, text, parent) {
  const made = document.createElement(name);
  if (text !== undefined) made.textContent = text;
  parent?.append(made);
  return made;
}

/** "line 12", "line 3 of O200.nc" */
function lineName(step) {
  const file = motion.files[steps.file[step]];
  return `line ${steps.line[step]}${file ? ` of ${file}` : ''}`;
}

/** As the trace tells times: small ones keep three figures. */
function duration(seconds) {
  if (seconds < 60) return say(seconds, 's', seconds < 0.0005 ? 6 : seconds < 0.01 ? 4 : seconds < 1 ? 3 : seconds < 10 ? 2 : 1);
  const whole = Math.round(seconds);
  const [hours, minutes, rest] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  return hours > 0 ? `${hours} h ${minutes} min` : `${minutes} min ${rest} s`;
}

/** "X12 Y78 Z-2 mm", "X12 Y78 mm, Z not known": the unit stands behind numbers only. */
function placeText(place, unitName) {
  const known = ['X', 'Y', 'Z'].flatMap((letter, axis) => (Number.isNaN(place[axis]) ? [] : `${letter}${lengthText(place[axis])}`));
  const unknown = ['X', 'Y', 'Z'].filter((_, axis) => Number.isNaN(place[axis]));
  return [...(known.length > 0 ? [`${known.join(' ')} ${unitName}`] : []), ...(unknown.length > 0 ? [`${unknown.join(' ')} not known`] : [])].join(', ');
}

/** 120, or "9000→8000" where the machine's limits make another of what the program says. */
const rateText = (machine, programmed, decimals) => (programmed === undefined ? machine : `${say(programmed, '', decimals)}→${say(machine, '', decimals)}`);

/** " shifted X100 Y20" where the program has shifted the work offset of a hole; without figures where it is not known by how much. */
function shiftText(hole) {
  if (!hole.shift) return '';
  const told = hole.shift.includes(null) ? [] : hole.shift.map((by, axis) => (by === 0 ? '' : ` ${'XYZ'[axis]}${lengthText(by)}`));
  return ` shifted${told.join('')}`;
}

/** What the moves of a block do, such as "rapid, feed 250 mm/min, dwell". */
function movesText(step) {
  const told = [];
  for (let move = firstMove(step); move < endMove(step) && told.length < 12; move++) {
    const kind = moves.kinds[moves.kind[move]];
    const text = kind === 'feed' || kind === 'arc' ? `${kind} ${say(inUnit(moves.feed[move]), `${unit}/min`, 3)}` : kind === 'toolChange' ? 'tool change' : kind;
    if (told.at(-1) !== text) told.push(text);
  }
  return told.length === 12 ? `${told.slice(0, 11).join(', ')} …` : told.join(', ') || 'none';
}

/** How near the moves done of the block in hand come to an obstacle; empty where there is none, or nothing travels. */
function clearanceText() {
  const move = cursor.nearest;
  if (move < 0) {
    let travels = false;
    for (let i = cursor.startMove; i < cursor.endMove && !travels; i++) travels = isMotion(i);
    return travels && motion.obstacles.length > 0 ? 'not known' : '';
  }
  const name = motion.obstacles[moves.obstacle[move]].name;
  const distance = moves.clearance[move];
  if (meets(move) && !isToolKnown(motion.states[steps.state[stepOfMove[move]]].tool)) return `meets ${name}, even with the tool's axis alone`;
  if (meets(move)) return `meets ${name}, ${distance < -0.0005 ? `${sayLength(-distance)} deep` : 'just touching'}`;
  return `${sayLength(distance)} to ${name}`;
}

function timeText() {
  const untimed = untimedTo[cursor.endMove];
  const own = untimed > untimedTo[cursor.startMove] ? 'not known' : duration(cursor.seconds - secondsTo[cursor.startMove]);
  const left = untimed === 0 ? '' : `, without ${untimed} ${untimed === 1 ? 'move' : 'moves'} of unknown time`;
  return `${own} for this block, ${duration(cursor.seconds)} so far${left}`;
}

const panels = {
  facts: new Map(),

  begin() {
    document.title = `${motion.name}: motion`;
    byId('name').textContent = motion.name;
    // What is not known of some moves comes on top.
    const over = motion.unknownMoves > 0 ? 'over ' : '';
    byId('subtitle').textContent =
      `Read for ${motion.machine}. ${motion.moveCount} moves, ${motion.holeCount} holes, ${over}${duration(motion.seconds)}; ` +
      `${over}${sayLength(motion.rapidDistance, 1)} at rapid, ${over}${sayLength(motion.cutDistance, 1)} cutting. Drawn in ${motion.frame}, lengths in ${motion.isInch ? 'inches' : 'mm'}; ` +
      `${motion.projection === 'first' ? 'first' : 'third'}-angle projection.`;
    for (const name of ['Line', 'Place', 'Clearance', 'Time', 'Moves', 'Tool', 'Feed, speed', 'Levels', 'Work offset', 'Codes']) {
      element('dt', name, byId('block-facts'));
      this.facts.set(name, element('dd', '', byId('block-facts')));
    }
    for (const note of motion.notes) element('li', note, byId('notes'));
    if (motion.notes.length === 0) byId('notes-heading').textContent = 'More';
    for (const reading of motion.readings) {
      element('dt', `${reading.name} ${reading.choice}`, byId('readings'));
      element('dd', reading.meaning, byId('readings'));
    }
    for (const head of byId('holes').tHead.querySelectorAll('.length')) head.textContent += `, ${unit}`;
    byId('holes').tHead.querySelector('.feed').textContent += `, ${unit}/min`;
    this.listJumps('contacts', motion.contacts, true);
    this.listJumps('closest', motion.closest, false);
    byId('contacts-heading').textContent =
      motion.contactCount === 0 ? (motion.obstacles.length === 0 ? 'No clamps are known' : 'No contact found in what was looked at')
      : motion.contactCount > motion.contacts.length ? `Contacts: ${motion.contactCount}, of which ${motion.contacts.length} are listed`
      : `Contacts: ${motion.contactCount}`;
    byId('closest-heading').hidden = motion.closest.length === 0;
    byId('left-choice').hidden = motion.left === undefined;
    this.listHoles(0);
  },

  listJumps(id, list, isContact) {
    for (const approach of list) {
      const item = element('li', undefined, byId(id));
      if (isContact) item.className = 'meets';
      const words = `${approach.text}, by the ${approach.part}`;
      // What lies behind the moves that are shown has none to go to.
      if (approach.move === undefined) {
        item.append(`${words}; its move is not shown`);
        continue;
      }
      const button = element('button', words, item);
      button.type = 'button';
      button.dataset.move = approach.move;
    }
    byId(id).addEventListener('click', (event) => {
      if (event.target.dataset.move === undefined) return;
      cursor.goToMove(Number(event.target.dataset.move));
      page.show();
    });
  },

  /** The rows of the table from one on, as many as a browser lays out at once. */
  listHoles(first) {
    const body = byId('holes').tBodies[0];
    body.replaceChildren();
    this.firstHole = first;
    byId('holes').tHead.querySelector('.offset').hidden = !motion.namesCoordinates;
    const end = Math.min(first + holesAtOnce, motion.holes.length);
    for (const hole of motion.holes.slice(first, end)) {
      const row = element('tr', undefined, body);
      const first = element('td', undefined, row);
      const jump = element('button', String(hole.number), first);
      jump.type = 'button';
      jump.dataset.number = hole.number;
      jump.setAttribute('aria-label', `To hole ${hole.number}`);
      element('td', hole.file ? `${hole.line} calls ${hole.file}` : String(hole.line), row);
      element('td', hole.cycle, row);
      element('td', hole.tool === null ? '?' : `T${hole.tool}`, row);
      if (motion.namesCoordinates) element('td', hole.workOffset === null ? '?' : hole.workOffset + shiftText(hole), row);
      const dwell = hole.dwellSeconds ? say(hole.dwellSeconds) : '–';
      const lengths = [hole.x, hole.y, hole.rLevel, hole.bottom, hole.returnTo].map((mm) => (mm === null ? null : lengthText(mm)));
      const rates = [rateText(inUnit(hole.feed), inUnit(hole.programmedFeed), motion.isInch ? 2 : 1), rateText(hole.speed, hole.programmedSpeed, 0)];
      for (const value of [...lengths, dwell, ...rates]) element('td', value === null ? '?' : typeof value === 'number' ? say(value) : value, row);
    }
    byId('holes-heading').textContent = motion.holes.length === 0 ? 'No holes' : `Holes: ${motion.holeCount}`;
    byId('holes-section').querySelector('.scroll').hidden = motion.holes.length === 0;
    const isWhole = motion.holes.length <= holesAtOnce;
    byId('more-holes').hidden = isWhole;
    byId('holes-shown').textContent = isWhole ? '' : `${first + 1} to ${end} of ${motion.holes.length}${motion.holes.length < motion.holeCount ? ' kept here' : ''}`;
    for (const [id, to] of [['holes-before', first - holesAtOnce], ['holes-behind', first + holesAtOnce]]) {
      byId(id).disabled = to < 0 || to >= motion.holes.length;
      byId(id).onclick = () => this.listHoles(to);
    }
  },

  show() {
    const { step } = cursor;
    byId('block-heading').textContent = step < 0 ? 'Before the first block' : `Block ${step + 1} of ${steps.count}`;
    byId('block-text').textContent = step < 0 ? '' : steps.text[step].slice(0, 500);
    byId('line').textContent = step < 0 ? 'Before the first block' : `${lineName(step)}:  ${steps.text[step].slice(0, 200)}`;
    const nearest = cursor.nearest;
    const state = step < 0 ? null : motion.states[steps.state[step]];
    const isWithin = step >= 0 && cursor.endMove < endMove(step);
    const tool = state && tools.get(state.tool);
    this.fact('Line', step < 0 ? '' : `${steps.line[step]}${motion.files[steps.file[step]] ? ` of ${motion.files[steps.file[step]]}` : ''}`);
    this.fact('Place', step < 0 ? '' : placeText(cursor.position, unit));
    this.fact('Tool', state ? (tool ? tool.text : state.toolText) : '');
    this.fact('Feed, speed', state ? `F ${state.feed}, S ${state.speed}` : '');
    this.fact('Codes', state ? state.codes : '');
    this.fact('Work offset', state ? state.offset : '');
    this.fact('Levels', state ? state.levels : '');
    this.fact('Moves', step < 0 ? '' : (isWithin ? `${cursor.endMove - cursor.startMove} of ${endMove(step) - cursor.startMove}: ` : '') + movesText(step));
    this.fact('Time', step < 0 ? '' : timeText());
    this.fact('Clearance', clearanceText());
    this.facts.get('Clearance').className = nearest >= 0 && meets(nearest) ? 'meets' : '';
    const slider = byId('slider');
    slider.value = step + 1;
    slider.setAttribute('aria-valuetext', step < 0 ? 'before the first block' : `block ${step + 1} of ${steps.count}, ${lineName(step)}: ${steps.text[step].slice(0, 200)}`);
  },

  /** A fact of the block; its row is hidden where there is nothing to say. */
  fact(name, text) {
    const told = this.facts.get(name);
    if (told.textContent !== text) told.textContent = text;
    if (told.hidden !== (text === '')) told.hidden = told.previousElementSibling.hidden = text === '';
  },

  /** Reads the block to those who listen, once the page has come to rest. */
  speak() {
    const { step } = cursor;
    const clearance = clearanceText();
    const nearness = clearance === 'not known' ? 'Clearance not known' : clearance;
    byId('spoken').textContent = step < 0 ? 'Before the first block' : `${lineName(step)}: ${steps.text[step].slice(0, 200)}. ${placeText(cursor.position, motion.isInch ? 'inches' : 'millimetres')}. ${nearness}`;
    const row = byId('holes').querySelector('tr[aria-current]');
    row?.removeAttribute('aria-current');
    const current = cursor.hole < this.firstHole ? null : byId('holes').tBodies[0].rows[cursor.hole - this.firstHole];
    current?.setAttribute('aria-current', 'step');
  },
};
