// The list beside the drawing is the field. With this file, touching the drawing answers it too.
const spots = [...document.querySelectorAll("[data-spot]")];
const fields = [...document.querySelectorAll("[name=spot]")];

function show() {
  const chosen = fields.find((one) => one.checked)?.value;
  for (const one of spots) one.classList.toggle("outline__spot--on", one.dataset.spot === chosen);
}

for (const spot of spots) {
  spot.addEventListener("click", () => {
    const field = fields.find((one) => one.value === spot.dataset.spot);
    field.checked = true;
    show();
  });
}
for (const field of fields) field.addEventListener("change", show);
fields[0]?.form.addEventListener("reset", () => setTimeout(show));
show();
