// Where in the run the page stands: behind a block, or behind one of its moves.

const cursor = {
  /** The block; -1 before the first. */
  step: -1,
  /** The moves of the block that are done: those from startMove up to endMove, which is excluded. */
  startMove: 0,
  endMove: 0,
  place: [NaN, NaN, NaN],
  position: [NaN, NaN, NaN],
  tool: -1,

  /** Goes behind a block. */
  goTo(step) {
    this.step = Math.max(-1, Math.min(step, steps.count - 1));
    this.startMove = this.step < 0 ? 0 : firstMove(this.step);
    this.endMove = this.step < 0 ? 0 : endMove(this.step);
    this.settle();
  },

  /** Goes behind a move. */
  goToMove(move) {
    if (move < 0 || moves.count === 0) {
      this.goTo(-1);
      return;
    }
    const last = Math.min(move, moves.count - 1);
    this.step = stepOfMove[last];
    this.startMove = firstMove(this.step);
    this.endMove = last + 1;
    this.settle();
  },

  /** Where the tool then stands. */
  settle() {
    if (this.step < 0) {
      this.position = this.place = [NaN, NaN, NaN];
      this.tool = -1;
      return;
    }
    this.position = [0, 1, 2].map((axis) => steps.position[this.step * 3 + axis]);
    // Behind the last move of a block stands what the block leaves; before it, where its last motion led.
    if (this.endMove < endMove(this.step))
      for (let move = this.endMove - 1; move >= this.startMove; move--)
        if (isMotion(move)) {
          this.position = [0, 1, 2].map((axis) => moves.to[move * 3 + axis]);
          break;
        }
    const shift = motion.shifts[steps.shift[this.step]];
    this.place = this.position.map((value, axis) => value + (shift[axis] ?? NaN));
    this.tool = motion.states[steps.state[this.step]].tool;
  },

  /** Seconds from the beginning of the run. */
  get seconds() {
    return secondsTo[this.endMove];
  },

  /** The hole in hand, by its index in the table: of those of the block, the one whose last move is not yet behind. -1 where the block drills none. */
  get hole() {
    let found = -1;
    // Holes are drilled in the order of the table.
    let [low, high] = [0, drilled.step.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (drilled.step[middle] < this.step) low = middle + 1;
      else high = middle;
    }
    for (; drilled.step[low] === this.step && this.step >= 0; low++) {
      found = low;
      if (drilled.move[low] >= this.endMove - 1) break;
    }
    return found;
  },

  /** The move of the block with the least distance to an obstacle; -1 where none is known. */
  get nearest() {
    let nearest = -1;
    if (moves.clearance)
      for (let move = this.startMove; move < this.endMove; move++)
        if (moves.obstacle[move] >= 0 && (nearest < 0 || moves.clearance[move] < moves.clearance[nearest])) nearest = move;
    return nearest;
  },
};

/** The blocks at which another tool or another cycle begins. */
const parts = [];
for (let step = 0; step < steps.count; step++) {
  const state = motion.states[steps.state[step]];
  const before = step > 0 ? motion.states[steps.state[step - 1]] : { tool: -1, cycle: 0 };
  if (state.tool !== before.tool || (state.cycle > 0 && state.cycle !== before.cycle)) parts.push(step);
}

/** The next such block behind a step, or the one before it. */
function partFrom(step, way) {
  if (way > 0) return parts.find((part) => part > step) ?? steps.count - 1;
  return parts.findLast((part) => part < step) ?? -1;
}
