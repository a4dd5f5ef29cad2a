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

// What may have to be said before the module, which has all other words, or without it. The build fills in the German
// out of the catalogue.
const ENGLISH = {
  failed: "Holdround could not start. What you typed before is still kept. ",
  host: "A part of it did not arrive, or not whole. Fetch it anew. If that does not help, open holdround.html from the same folder, the whole page in one file, and tell whoever looks after the host: every file of the site must be there. ",
  damaged: "The file is damaged: get it anew. ",
  needs: "It needs WebAssembly; a browser brought up to date has it. ",
  said: "What the browser said: ",
  fetch: "Fetch it anew",
  unreachable: "The host cannot be reached now. Nothing was changed; try again later.",
  ready: "A new version of Holdround is ready. ",
  use: "Use the new version",
};
const GERMAN = {};

// The language of the page; before it has started, that of the browser.
function say(what) {
  const languages = document.documentElement.dataset.theme ? [document.documentElement.lang] : navigator.languages;
  const language = languages.find((language) => /^(en|de)\b/i.test(language)) ?? "en";
  return (/^de/i.test(language) ? GERMAN : ENGLISH)[what];
}

function sayItFailed(reason) {
  const words = document.createElement("p");
  words.setAttribute("role", "alert");
  const works = typeof WebAssembly === "object";
  const onHost = works && !document.getElementById("module");
  words.textContent = say("failed") + say(onHost ? "host" : works ? "damaged" : "needs") + say("said") + reason;
  document.querySelector("main").replaceChildren(words);
  if (!onHost) return;
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = say("fetch");
  button.addEventListener("click", () => fetchAnew().catch(() => (words.textContent = say("unreachable"))));
  words.after(button);
}

// Gives up what was kept of the site, not what was typed, once it is sure that the host can be reached.
async function fetchAnew() {
  await fetch("sw.js", { cache: "no-store" });
  const registration = await navigator.serviceWorker?.getRegistration();
  if (registration) {
    const names = await caches.keys();
    const ours = names.filter((name) => name.startsWith(`holdround ${registration.scope} `));
    await Promise.all(ours.map((name) => caches.delete(name)));
    await registration.unregister();
  }
  await Promise.all(["holdround_web.js", "holdround_web_bg.wasm"].map((file) => fetch(file, { cache: "reload" })));
  location.reload();
}

function offerUpdate(waiting) {
  const words = document.createElement("p");
  const ready = document.createElement("span");
  const button = document.createElement("button");
  button.type = "button";
  const speak = () => {
    ready.textContent = say("ready");
    button.textContent = say("use");
  };
  speak();
  // The offer may stand when another language is chosen.
  new MutationObserver(speak).observe(document.documentElement, { attributeFilter: ["lang"] });
  button.addEventListener(
    "click",
    () => {
      button.disabled = true;
      navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
      waiting.postMessage("use the new version");
    },
    { once: true },
  );
  words.append(ready, button);
  document.getElementById("update").replaceChildren(words);
}

async function keepForOffline() {
  // The single file is all there is to keep.
  if (document.getElementById("module") || !/^https?:$/.test(location.protocol)) return;
  try {
    const workers = navigator.serviceWorker;
    const name = "sw.js";
    const policy = globalThis.trustedTypes?.createPolicy("holdround", { createScriptURL: () => name });
    const registration = await workers.register(policy?.createScriptURL("") ?? name, { updateViaCache: "none" });
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
