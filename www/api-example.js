// How another page uses the functions that api.d.ts describes: load the module, then ask.
import load, { evaluate, examples, validate } from "./holdround_web.js";

const speeds = ["0 rev/min", "500 rev/min", "1000 rev/min", "1500 rev/min"];
const wanted = ["grip.speed", "hold.factor", "shape.roundness"];

const list = document.getElementById("example");
const told = document.getElementById("told");

// A value is in SI with its unit beside it; where the model refuses one, it says why.
function inWords({ findings }, id) {
  const finding = findings.find((one) => one.id === id);
  if (!finding) return "not asked for";
  if (finding.value === null) return finding.refused;
  if (finding.unit === "m") return `${(finding.value * 1e6).toFixed(1)} µm`;
  return `${finding.value.toFixed(2)} ${finding.unit === "1" ? "" : finding.unit}`;
}

function row(setup, speed) {
  const line = document.createElement("tr");
  const cells = [speed];
  try {
    const found = evaluate({ ...setup, run: { ...setup.run, speed } });
    cells.push(...wanted.map((id) => inWords(found, id)));
  } catch (refusal) {
    // A set-up that is not valid is refused with every fault of it.
    cells.push(refusal.faults.map((fault) => `${fault.name}: allowed is ${fault.allowed}`).join("; "));
  }
  for (const text of cells) line.insertCell().textContent = text;
  return line;
}

function show() {
  const { title, setup } = examples()[list.selectedIndex];
  const faults = validate(setup);
  document.getElementById("rows").replaceChildren(...speeds.map((speed) => row(setup, speed)));
  told.textContent = `${title}: ${faults.length} faults.`;
}

await load();
for (const { title } of examples()) list.add(new Option(title));
list.addEventListener("change", show);
show();
