// The pad works without this file: each key is then a round to the server. With it, keys are at once.
const pin = document.querySelector("#pin");
for (const key of document.querySelectorAll("[name=_digit], [name=_wipe]")) {
  key.addEventListener("click", (pressed) => {
    pressed.preventDefault();
    pin.value = key.name === "_wipe" ? "" : (pin.value + key.value).slice(0, pin.maxLength);
  });
}
