// The page: two phones lie open side by side, the others wait; on a narrow screen one at a time.
import { draw, toTheEnd } from "./lines.js";
import { act, element, post } from "./tools.js";

const pages = new Map(); // by number of the phone
const desk = []; // the numbers of the two that lie open, left and right
const at = (id) => document.getElementById(id);

function addPage(phone) {
  const section = at("page").content.firstElementChild.cloneNode(true);
  const find = (selector) => section.querySelector(selector);
  const page = {
    id: phone.id, name: phone.name, section, tab: element("button", "", phone.name), whose: find("h2 select"),
    lines: find(".lines"), notice: find(".notice"), offered: find(".offered"), text: find("textarea"),
    send: find(".send"), cancel: find(".cancel"), instead: find(".instead"),
    editing: null, drawn: new Map(), notices: 0, offers: "",
  };
  page.edit = (message) => edit(page, message);
  find("h2 span").textContent = phone.name;
  find(".sr").textContent = `Write as ${phone.name}`;
  page.tab.type = "button";
  listen(page, find(".write"), find("input[type=file]"));
  at("pages").append(section);
  at("tabs").append(page.tab);
  pages.set(page.id, page);
  if (desk.length < 2) desk.push(page.id);
  arrange();
  if (pages.size === 1) open(page.id);
}

function listen(page, form, file) {
  page.tab.addEventListener("click", () => open(page.id));
  page.whose.addEventListener("change", () => lay(page, Number(page.whose.value)));
  form.addEventListener("submit", (event) => { event.preventDefault(); write(page); });
  page.cancel.addEventListener("click", () => edit(page, null));
  page.text.addEventListener("keydown", (event) => {
    if (event.key === "Escape") edit(page, null);
    if (event.key !== "Enter" || event.shiftKey || event.isComposing) return;
    event.preventDefault();
    write(page);
  });
  file.addEventListener("change", () => sendFile(page, file));
  for (const button of page.instead.querySelectorAll("button")) {
    button.addEventListener("click", () => sendInstead(page, button.dataset.kind, ""));
  }
}

// Narrow screens: turn to this phone.
function open(id) {
  for (const page of pages.values()) {
    const chosen = page.id === id;
    page.section.classList.toggle("open", chosen);
    page.tab.setAttribute("aria-pressed", chosen);
    if (chosen) {
      page.tab.classList.remove("fresh");
      toTheEnd(page.lines);
    }
  }
}

// Wide screens: lay another phone where this one is; if it lies open already, the two change places.
function lay(page, id) {
  const here = desk.indexOf(page.id);
  const there = desk.indexOf(id);
  if (there >= 0) desk[there] = page.id;
  desk[here] = id;
  arrange();
  pages.get(id).whose.focus();
}

function arrange() {
  const order = [...desk, ...[...pages.keys()].filter((id) => !desk.includes(id))];
  for (const id of order) {
    const page = pages.get(id);
    page.section.classList.toggle("away", !desk.includes(id));
    page.section.classList.toggle("some-wait", pages.size > 2);
    page.whose.replaceChildren(...[...pages.values()].map((each) => new Option(each.name, each.id)));
    page.whose.value = id;
    at("pages").append(page.section);
    toTheEnd(page.lines);
  }
}

async function write(page) {
  const text = page.text.value.trim();
  if (!text) return;
  const done = page.editing
    ? await act(page, "edit", { message: page.editing, text })
    : await act(page, "type", { text });
  if (done) edit(page, null);
}

function edit(page, message) {
  page.editing = message ? message.id : null;
  page.text.value = message ? message.text : "";
  page.send.textContent = message ? "Change" : "Send";
  page.cancel.hidden = !message;
  if (message) page.text.focus();
}

function sendFile(page, file) {
  const [chosen] = file.files;
  if (!chosen) return;
  const reader = new FileReader();
  const kind = chosen.type.startsWith("video/") ? "video" : "photo";
  // A data URL: what follows the comma is the content in base64.
  reader.addEventListener("load", () => sendInstead(page, kind, reader.result.split(",")[1] || ""));
  reader.readAsDataURL(chosen);
  file.value = "";
}

async function sendInstead(page, kind, data) {
  await act(page, "send", { kind, data });
  page.instead.open = false;
}

function showNotice(page, notices) {
  if (notices.length > page.notices) page.notice.textContent = notices.at(-1);
  page.notices = notices.length;
}

function offer(page, labels) {
  if (labels.join("\n") === page.offers) return;
  page.offers = labels.join("\n");
  page.offered.replaceChildren(...labels.map((label) => {
    const button = element("button", "", label);
    button.type = "button";
    button.addEventListener("click", () => act(page, "type", { text: label }));
    return button;
  }));
}

function show(state) {
  at("clock").textContent = state.time;
  at("skip").hidden = !state.can_skip;
  for (const phone of state.phones) {
    if (!pages.has(phone.id)) addPage(phone);
    const page = pages.get(phone.id);
    const grown = draw(page, phone);
    if (grown && !page.section.classList.contains("open")) page.tab.classList.add("fresh");
    showNotice(page, phone.notices);
    offer(page, phone.keyboard);
  }
}

async function watch() {
  let version = -1;
  for (;;) {
    try {
      const state = await (await fetch(`/phone/state?version=${version}`)).json();
      version = state.version;
      at("lost").hidden = true;
      show(state);
    } catch {
      at("lost").hidden = false;
      await new Promise((resume) => setTimeout(resume, 2000)); // milliseconds; own choice
    }
  }
}

async function addPhone() {
  const { id } = await post("/phone/add", { name: at("name").value });
  at("name").value = "";
  at("add").open = false;
  if (!pages.has(id)) show(await (await fetch("/phone/state")).json());
  lay(pages.get(desk.at(-1)), id);
  open(id);
}

at("add").querySelector("form").addEventListener("submit", (event) => { event.preventDefault(); addPhone(); });
at("skip").addEventListener("click", async () => {
  at("skip").disabled = true;
  try {
    at("came-to").textContent = (await post("/clock/skip", {})).came_to;
  } finally {
    at("skip").disabled = false;
  }
});
watch();
