/** Puts the focus into a field of a dialog when it first appears, with what it says selected. */
export const focusOnce = (el: HTMLInputElement | null): void => {
  if (el && !el.dataset.met) {
    el.dataset.met = 'yes';
    el.focus();
    el.select();
  }
};
