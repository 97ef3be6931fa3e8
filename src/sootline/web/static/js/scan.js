// Reads a code with the camera where the browser can do both; elsewhere the photo form below does it.
const box = document.getElementById("scan");
const [button, video, said] = ["button", "video", "p"].map((one) => box.querySelector(one));
const EVERY_MS = 250;
const KINDS = ["qr_code", "code_39"];

async function able() {
  if (!("BarcodeDetector" in window) || !navigator.mediaDevices?.getUserMedia) return false;
  const known = await BarcodeDetector.getSupportedFormats();
  return KINDS.every((one) => known.includes(one));
}

async function look() {
  let camera;
  try {
    camera = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
  } catch {
    said.textContent = box.dataset.refused;
    return;
  }
  video.srcObject = camera;
  video.hidden = false;
  await video.play();
  const text = await read(new BarcodeDetector({ formats: KINDS }));
  for (const track of camera.getTracks()) track.stop();
  location.assign(`${box.dataset.find}?q=${encodeURIComponent(text)}`);
}

async function read(detector) {
  for (;;) {
    const [found] = await detector.detect(video);
    if (found) return found.rawValue;
    await new Promise((done) => setTimeout(done, EVERY_MS));
  }
}

if (await able()) {
  box.hidden = false;
  button.addEventListener("click", look);
}
