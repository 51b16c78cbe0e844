// Big keys for a gloved hand; without this the field and the device's own keys do.
const keys = document.querySelector(".pin-keys");
const field = document.querySelector("#pin");

function press(key) {
  if (key === "delete") field.value = field.value.slice(0, -1);
  else if (field.value.length < field.maxLength) field.value += key;
  field.focus({ preventScroll: true });
}

if (keys && field) {
  for (const key of ["1", "2", "3", "4", "5", "6", "7", "8", "9", "delete", "0"]) {
    const button = document.createElement("button");
    button.type = "button";
    button.className = key === "delete" ? "button pin-key pin-delete" : "button pin-key";
    button.textContent = key === "delete" ? "Back" : key;
    if (key === "delete") button.setAttribute("aria-label", "Take the last digit back");
    button.addEventListener("click", () => press(key));
    keys.append(button);
  }
  keys.hidden = false;
}
