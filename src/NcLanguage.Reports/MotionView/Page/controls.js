// Keys, buttons, slider, wheel and drag.

/** A contact behind the cursor, or before it. */
function goToContact(way) {
  const found = way > 0
    ? motion.contacts.find((contact) => contact.move >= cursor.endMove)
    : motion.contacts.findLast((contact) => contact.move < cursor.endMove - 1);
  if (found) cursor.goToMove(found.move);
}

const keys = {
  ArrowRight: () => cursor.goTo(cursor.endMove < endMove(Math.max(cursor.step, 0)) && cursor.step >= 0 ? cursor.step : cursor.step + 1),
  ArrowLeft: () => cursor.goTo(cursor.step - 1),
  ArrowDown: () => cursor.goToMove(cursor.endMove),
  ArrowUp: () => cursor.goToMove(cursor.endMove - 2),
  PageDown: () => cursor.goTo(partFrom(cursor.step, 1)),
  PageUp: () => cursor.goTo(partFrom(cursor.step, -1)),
  Home: () => cursor.goTo(-1),
  End: () => cursor.goTo(steps.count - 1),
  c: () => goToContact(1),
  C: () => goToContact(-1),
};

const pictureKeys = {
  '+': () => camera.zoom(1.25),
  '=': () => camera.zoom(1.25),
  '-': () => camera.zoom(0.8),
  0: () => camera.fit(page.views),
};

function onKey(event) {
  if (event.ctrlKey || event.altKey || event.metaKey) return;
  const target = event.target;
  const isOnSlider = target.id === 'slider';
  const isOnControl = target.closest('select, button, summary, a, input') !== null && !isOnSlider;
  const isOnScroller = target.closest('.scroll') !== null;
  if (event.shiftKey && event.key.startsWith('Arrow')) {
    const [right, down] = { ArrowLeft: [-40, 0], ArrowRight: [40, 0], ArrowUp: [0, -40], ArrowDown: [0, 40] }[event.key];
    camera.pan(projections.plan, right, down);
    if (down) camera.middle[2] += down / camera.scale;
    page.follow();
  } else if (event.key.length === 1 && event.key !== ' ' && !byId('sign-keys').checked) {
    // Who speaks to the computer, or whose hand slips, can do without keys of one letter or sign.
    return;
  } else if (pictureKeys[event.key]) {
    pictureKeys[event.key]();
    page.follow();
  } else if (event.key === ' ' && !isOnControl) {
    page.toggleRun();
  } else if (keys[event.key] && !(isOnControl && target.tagName === 'SELECT') && !(isOnScroller && event.key !== 'c' && event.key !== 'C')) {
    page.stop();
    keys[event.key]();
    page.show();
  } else return;
  event.preventDefault();
}

function listen() {
  document.addEventListener('keydown', onKey);
  const press = (id, act) => byId(id).addEventListener('click', () => {
    page.stop();
    act();
    page.show();
  });
  press('to-start', keys.Home);
  press('back', keys.ArrowLeft);
  press('forward', keys.ArrowRight);
  press('to-end', keys.End);
  byId('play').addEventListener('click', () => page.toggleRun());
  byId('fit').addEventListener('click', () => {
    camera.fit(page.views);
    page.redraw();
  });
  byId('slider').addEventListener('input', (event) => {
    page.stop();
    cursor.goTo(Number(event.target.value) - 1);
    page.show();
  });
  byId('show').addEventListener('change', (event) => {
    shown[event.target.value] = event.target.checked;
    page.redraw();
  });
  byId('theme').addEventListener('change', (event) => {
    if (event.target.value) document.documentElement.dataset.theme = event.target.value;
    else delete document.documentElement.dataset.theme;
    page.recolour();
  });
  byId('holes').addEventListener('click', (event) => {
    if (event.target.dataset.number === undefined) return;
    page.stop();
    goToHole(Number(event.target.dataset.number));
    page.show();
  });
  for (const view of page.views) listenTo(view);
}

/** Goes behind the last move of a hole. */
function goToHole(number) {
  const [step, move] = [drilled.step[number - 1], drilled.move[number - 1]];
  if (move >= firstMove(step)) cursor.goToMove(move);
  else cursor.goTo(step);
}

function listenTo(view) {
  const { canvas } = view;
  canvas.addEventListener('wheel', (event) => {
    event.preventDefault();
    const box = canvas.getBoundingClientRect();
    camera.zoom(Math.exp(-event.deltaY * 0.0015), view.projection, view.placeAt(event.clientX - box.left, event.clientY - box.top));
    page.follow();
  }, { passive: false });
  let last = null;
  canvas.addEventListener('pointerdown', (event) => {
    canvas.setPointerCapture(event.pointerId);
    last = [event.clientX, event.clientY];
    canvas.classList.add('dragged');
  });
  canvas.addEventListener('pointermove', (event) => {
    if (!last) return;
    camera.pan(view.projection, event.clientX - last[0], event.clientY - last[1]);
    last = [event.clientX, event.clientY];
    page.follow();
  });
  const end = () => {
    last = null;
    canvas.classList.remove('dragged');
  };
  canvas.addEventListener('pointerup', end);
  canvas.addEventListener('pointercancel', end);
}
