// Starts the page, keeps it for use without a network, and offers a new version when there is one.

async function start() {
  // The single file carries the module in itself; the site loads it from beside this script.
  const carried = document.getElementById("module");
  if (carried) {
    const bytes = Uint8Array.from(atob(carried.textContent), (letter) => letter.charCodeAt(0));
    await wasm_bindgen({ module_or_path: bytes });
  } else {
    const { default: load } = await import("./holdround_web.js");
    await load();
  }
}

function sayItFailed(reason) {
  const words = document.createElement("p");
  words.setAttribute("role", "alert");
  words.textContent =
    "Holdround could not start in this browser. It needs WebAssembly; a browser brought up to date will have it. " +
    `What the browser said: ${reason}`;
  document.querySelector("main").replaceChildren(words);
}

function offerUpdate(waiting) {
  const words = document.createElement("p");
  words.textContent = "A new version of Holdround is ready. ";
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = "Use the new version";
  button.addEventListener(
    "click",
    () => {
      button.disabled = true;
      navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
      waiting.postMessage("use the new version");
    },
    { once: true },
  );
  words.append(button);
  document.getElementById("update").replaceChildren(words);
}

async function keepForOffline() {
  if (!/^https?:$/.test(location.protocol)) return;
  try {
    const workers = navigator.serviceWorker;
    const registration = await workers.register("sw.js", { updateViaCache: "none" });
    const look = () => {
      if (registration.waiting && workers.controller) offerUpdate(registration.waiting);
    };
    look();
    registration.addEventListener("updatefound", () => {
      registration.installing?.addEventListener("statechange", look);
    });
    await workers.ready;
    document.documentElement.dataset.offline = "ready";
  } catch {
    // Inside another page's frame, or over plain http, the browser may forbid it: the page works without.
  }
}

try {
  await start();
} catch (reason) {
  sayItFailed(reason);
  console.error(reason);
}
keepForOffline();
