// Keeps the focus where it was for whoever uses keys, when what had it is drawn anew, goes or is greyed out: on what comes
// next behind the last thing before it that is still there.
(() => {
  const FOCUSABLE = 'a[href], button, input, select, textarea, summary, [tabindex="0"]';
  let byKeys = false;
  let held = null;
  let before = [];

  const isThere = (one) => one.isConnected && !one.disabled && (!one.checkVisibility || one.checkVisibility());
  const all = () => [...(document.querySelector('dialog[open]') ?? document.body).querySelectorAll(FOCUSABLE)].filter(isThere);

  addEventListener('keydown', () => { byKeys = true; }, true);
  addEventListener('pointerdown', () => { byKeys = false; }, true);
  addEventListener('focusin', ({ target }) => {
    held = byKeys ? target : null;
    if (!held) return;
    const now = all();
    before = now.slice(0, Math.max(now.indexOf(target), 0));
  });

  function find() {
    const on = document.activeElement;
    if (!byKeys || !held || (on && on !== document.body) || isThere(held)) return;
    const now = all();
    const last = now.indexOf(before.findLast((one) => now.includes(one)));
    const begin = document.querySelector('dialog[open] h2') ?? document.getElementById('place');
    (last < 0 ? begin : now[last + 1] ?? now[last])?.focus();
  }

  // Behind whatever the page itself does with the focus once it is drawn.
  const changed = () => { if (byKeys) requestAnimationFrame(() => setTimeout(find)); };
  new MutationObserver(changed).observe(document.documentElement, { childList: true, subtree: true, attributeFilter: ['disabled', 'open'] });
})();
