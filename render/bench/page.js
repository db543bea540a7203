(function () {
  'use strict';
  const root = document.documentElement, body = document.body;
  const steps = Array.from(document.querySelectorAll('section'));
  const button = (id) => document.getElementById(id);
  const key = 'mullion cuts ' + body.dataset.plan;
  const bounce = 250; // milliseconds in which a wet thumb touches twice
  const least_fit = 0.5;
  let at = 0, piece = 1, ticks = {}, keeps = true, last = -bounce, lock = null, shown = null;

  const group = (i) => steps[i] && steps[i].dataset.group;
  const pieces = (i) => Number(steps[i].dataset.pieces) || 1;
  const once = (i) => Boolean(steps[i].dataset.once);
  const counts = (i) => !steps[i].classList.contains('read');
  const filled = (text, values) => text.replace(/%([12])/g, (_, n) => values[n - 1]);

  // The step before or after, through the steps of a group for one mat after the other.
  function beside(by) {
    let i = at, p = piece;
    do {
      const own = group(i), n = pieces(i);
      let j = i + by;
      if (group(j) !== own) {
        if (n > 1 && (by > 0 ? p < n : p > 1)) {
          for (j = i; group(j - by) === own;) j -= by;
          p += by;
        } else {
          if (!steps[j]) return null;
          p = by > 0 ? 1 : pieces(j);
        }
      }
      i = j;
    } while (once(i) && p > 1);
    return [i, p];
  }

  const mats = (i) => (once(i) ? 1 : pieces(i));
  const is_ticked = (i, p) => (ticks[i] || '')[p - 1] === 'x';
  function tick(i, p, on) {
    if (!counts(i)) return;
    const all = (ticks[i] || '').padEnd(p, '-');
    ticks[i] = all.slice(0, p - 1) + (on ? 'x' : '-') + all.slice(p);
  }

  function keep() {
    try {
      localStorage.setItem(key, JSON.stringify({ at, piece, ticks }));
    } catch (error) { keeps = false; }
  }
  function remember() {
    try {
      const kept = JSON.parse(localStorage.getItem(key)) || {};
      for (const [i, all] of Object.entries(kept.ticks || {})) if (steps[i] && typeof all === 'string') ticks[i] = all;
      if (Number.isInteger(kept.at) && steps[kept.at]) at = kept.at;
      if (Number.isInteger(kept.piece) && kept.piece >= 1 && kept.piece <= pieces(at)) piece = kept.piece;
    } catch (error) { keeps = false; }
  }

  // Smaller type where a step would not be seen whole.
  function fit(step) {
    step.classList.add('measured'); // the picture is drawn once, when its size is known
    fit_words(step);
    step.classList.remove('measured');
  }
  function fit_words(step) {
    const texts = Array.from(step.querySelectorAll('dd, p'));
    const is_whole = (size) => {
      step.style.setProperty('--fit', size.toFixed(3));
      return step.scrollHeight <= step.clientHeight && step.scrollWidth <= step.clientWidth &&
        texts.every((one) => one.scrollWidth <= one.clientWidth + 1);
    };
    if (is_whole(1)) return;
    let whole = least_fit, more = 1;
    while (more - whole > 0.02) {
      const size = (whole + more) / 2;
      if (is_whole(size)) whole = size; else more = size;
    }
    is_whole(whole);
  }

  function tell() {
    let done = 0, all = 0;
    steps.forEach((step, i) => {
      if (!counts(i)) return;
      const own = (ticks[i] || '').split('x').length - 1;
      done += own;
      all += mats(i);
      step.classList.toggle('ticked', own === mats(i));
    });
    button('done').max = all;
    button('done').value = done;
    button('ticks').textContent = filled(body.dataset.ticks, [done, all]);
    button('tick').setAttribute('aria-pressed', String(is_ticked(at, piece)));
    button('tick').disabled = !counts(at);
    button('back').disabled = beside(-1) === null;
    button('next').disabled = beside(1) === null && (!counts(at) || is_ticked(at, piece));
    button('lost').hidden = keeps;
    const sure = button('afresh');
    sure.hidden = done === 0 || counts(at);
    sure.textContent = sure.dataset.word;
    delete sure.dataset.pressed;
  }

  function show() {
    if (shown) shown.classList.remove('here');
    shown = steps[at];
    shown.classList.add('here');
    const step = shown, told = step.querySelector('.piece');
    if (told) told.textContent = filled(body.dataset.piece, [piece, pieces(at)]);
    step.classList.toggle('again', piece > 1);
    keep();
    tell();
    fit(step);
    step.scrollTop = 0;
    step.focus({ preventScroll: true });
  }

  function go(by) {
    if (by > 0) tick(at, piece, true);
    const to = beside(by);
    if (to) [at, piece] = to;
    show();
  }

  function look_at_all(on) {
    root.classList.toggle('all', on);
    button('all').setAttribute('aria-pressed', String(on));
    steps.forEach((step) => step.style.removeProperty('--fit'));
    if (!on) return show();
    button('all').blur(); // so that the space bar scrolls
    steps[at].scrollIntoView();
  }

  function stay_awake() {
    if (lock || document.visibilityState !== 'visible' || !navigator.wakeLock) return;
    navigator.wakeLock.request('screen').then((granted) => {
      lock = granted;
      granted.addEventListener('release', () => { lock = null; });
    }, () => {});
  }

  function on_touch(id, does) {
    button(id).addEventListener('click', (event) => {
      if (event.detail > 0 && event.timeStamp - last < bounce) return;
      last = event.timeStamp;
      stay_awake();
      does();
    });
  }

  const keys = { ' ': 1, Enter: 1, ArrowRight: 1, ArrowDown: 1, PageDown: 1, ArrowLeft: -1, ArrowUp: -1, PageUp: -1 };
  document.addEventListener('keydown', (event) => {
    const by = keys[event.key] * (event.key === ' ' && event.shiftKey ? -1 : 1);
    if (event.key === 'Escape' && root.classList.contains('all')) look_at_all(false);
    if (!by || event.ctrlKey || event.altKey || event.metaKey || root.classList.contains('all')) return;
    if (event.target.tagName === 'BUTTON' && (event.key === ' ' || event.key === 'Enter')) return;
    event.preventDefault();
    if (!event.repeat) go(by);
    stay_awake();
  });
  on_touch('next', () => go(1));
  on_touch('back', () => go(-1));
  on_touch('tick', () => { tick(at, piece, !is_ticked(at, piece)); show(); });
  on_touch('all', () => look_at_all(!root.classList.contains('all')));
  on_touch('afresh', () => {
    const sure = button('afresh');
    if (sure.dataset.pressed) {
      ticks = {};
      show();
      return;
    }
    sure.dataset.pressed = 'yes';
    sure.textContent = sure.dataset.sure;
  });
  document.querySelector('main').addEventListener('click', (event) => {
    if (!root.classList.contains('all')) return;
    at = steps.indexOf(event.target.closest('section'));
    piece = 1;
    look_at_all(false);
  });
  document.addEventListener('visibilitychange', stay_awake);
  addEventListener('resize', () => { if (!root.classList.contains('all')) fit(steps[at]); });

  steps.forEach((step, i) => {
    step.tabIndex = -1;
    step.querySelector('h2').id = 'h' + (i + 1);
    step.setAttribute('aria-labelledby', 'h' + (i + 1));
  });
  button('afresh').dataset.word = button('afresh').textContent;
  remember();
  root.classList.add('js');
  document.querySelector('footer').hidden = false;
  show();
  stay_awake();
})();
