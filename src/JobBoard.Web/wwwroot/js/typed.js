// What somebody has typed or chosen and not yet sent stays as it is, whatever is pushed meanwhile.
const touched = new WeakSet();

function touch(event) {
  touched.add(event.target);
}

document.addEventListener("input", touch, true);
document.addEventListener("change", touch, true);

/** Whether a field holds something its reader put there. */
export const keepsTyped = (element) => touched.has(element) || (element.matches("option") && touched.has(element.closest("select")));

/** Forgets what was typed in a form, once it was sent. */
export function forgetTyped(form) {
  for (const field of form.elements) touched.delete(field);
}
