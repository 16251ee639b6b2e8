"use strict";

// One entry per phone: its parts on the page, the message being edited, what was drawn last.
const pages = new Map();
const at = (id) => document.getElementById(id);

function element(tag, className, text) {
  const made = document.createElement(tag);
  if (className) made.className = className;
  if (text !== undefined) made.textContent = text;
  return made;
}

async function post(path, body) {
  const answer = await fetch(path, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(body),
  });
  return answer.json();
}

async function act(page, what, body) {
  const answer = await post(`/phone/${page.id}/${what}`, body);
  page.notice.textContent = answer.error || "";
  return !answer.error;
}

function open(id) {
  for (const page of pages.values()) {
    const chosen = page.id === id;
    page.section.classList.toggle("open", chosen);
    page.tab.setAttribute("aria-pressed", chosen);
    if (chosen) {
      page.tab.classList.remove("fresh");
      page.lines.scrollTop = page.lines.scrollHeight;
    }
  }
}

function addPage(phone) {
  const section = at("page").content.firstElementChild.cloneNode(true);
  const find = (selector) => section.querySelector(selector);
  const page = {
    id: phone.id, section, tab: element("button", "", phone.name), lines: find(".lines"), notice: find(".notice"),
    text: find("textarea"), send: find(".send"), cancel: find(".cancel"), instead: find(".instead"),
    editing: null, drawn: new Map(), notices: 0,
  };
  find("h2").textContent = phone.name;
  find(".sr").textContent = `Write as ${phone.name}`;
  page.tab.type = "button";
  page.tab.addEventListener("click", () => open(page.id));
  listen(page, find(".write"), find("input[type=file]"));
  at("pages").append(section);
  at("tabs").append(page.tab);
  pages.set(page.id, page);
  if (pages.size === 1) open(page.id);
}

function listen(page, form, file) {
  form.addEventListener("submit", (event) => { event.preventDefault(); write(page); });
  page.cancel.addEventListener("click", () => edit(page, null));
  page.text.addEventListener("keydown", (event) => {
    if (event.key === "Escape") edit(page, null);
    if (event.key !== "Enter" || event.shiftKey || event.isComposing) return;
    event.preventDefault();
    write(page);
  });
  file.addEventListener("change", () => sendPicture(page, file));
  for (const button of page.instead.querySelectorAll("button")) {
    button.addEventListener("click", () => sendInstead(page, button.dataset.kind, ""));
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

function sendPicture(page, file) {
  const reader = new FileReader();
  // A data URL: what follows the comma is the picture in base64.
  reader.addEventListener("load", () => sendInstead(page, "photo", reader.result.split(",")[1] || ""));
  if (file.files[0]) reader.readAsDataURL(file.files[0]);
  file.value = "";
}

async function sendInstead(page, kind, data) {
  await act(page, "send", { kind, data });
  page.instead.open = false;
}

function line(page, message, before) {
  const same = before && before.mine === message.mine && before.day === message.day && !before.buttons.length;
  const item = element("li", (message.mine ? "mine" : "theirs") + (same && message.kind === "text" ? " same" : ""));
  const entry = element("div", "entry");
  if (!item.classList.contains("same")) entry.append(element("span", "who", message.mine ? "You" : "cuffline"));
  entry.append(...content(page, message));
  item.append(element("time", "", message.time), entry);
  return item;
}

function content(page, message) {
  const parts = [];
  const link = `/phone/${page.id}/attachment/${message.id}`;
  if (message.kind === "photo") parts.push(picture(link, message));
  if (message.kind === "document") parts.push(download(link, message.document));
  if (message.kind === "sticker") parts.push(element("p", "text aside", "a sticker"));
  if (message.kind === "voice") parts.push(element("p", "text aside", "a voice note"));
  if (message.text) parts.push(words(page, message));
  if (message.buttons.length) parts.push(choices(page, message));
  return parts;
}

function words(page, message) {
  const text = element("p", "text", message.text);
  if (message.edited && message.mine) text.append(element("span", "aside", "  changed"));
  if (message.quiet) text.append(element("span", "aside", "  without a sound"));
  if (message.mine && message.kind === "text") text.append(pencil(page, message));
  return text;
}

function pencil(page, message) {
  const button = element("button", "pencil", "\u270e");
  button.type = "button";
  button.title = "Change what you wrote";
  button.setAttribute("aria-label", button.title);
  button.addEventListener("click", () => edit(page, message));
  return button;
}

function picture(link, message) {
  const image = element("img", "picture");
  image.alt = message.text || "A picture";
  image.src = link;
  return image;
}

function download(link, name) {
  const anchor = element("a", "text", name);
  anchor.href = link;
  anchor.download = name;
  return anchor;
}

function choices(page, message) {
  const box = element("div", "choices");
  for (const [label, data] of message.buttons.flat()) {
    const button = element("button", "", label);
    button.type = "button";
    button.addEventListener("click", () => act(page, "tap", { message: message.id, data }));
    box.append(button);
  }
  return box;
}

// Only lines whose content changed are made anew, so that focus and scrolling stay where they are.
function draw(page, phone) {
  const nearEnd = page.lines.scrollHeight - page.lines.scrollTop - page.lines.clientHeight < 80;
  const grown = phone.messages.some((message) => !page.drawn.has(`m${message.id}`));
  const kept = new Map();
  let before = null;
  for (const message of phone.messages) {
    if (!before || before.day !== message.day) {
      keep(page, kept, `d${message.day}`, message.day, () => element("li", "day", message.day));
    }
    const key = JSON.stringify([message, before && [before.mine, before.day, before.buttons.length]]);
    const previous = before;
    keep(page, kept, `m${message.id}`, key, () => line(page, message, previous));
    before = message;
  }
  place(page, kept);
  if (grown && !page.section.classList.contains("open")) page.tab.classList.add("fresh");
  if (grown && nearEnd) page.lines.scrollTop = page.lines.scrollHeight;
  showNotice(page, phone.notices);
}

function keep(page, kept, name, key, make) {
  const old = page.drawn.get(name);
  kept.set(name, old && old.key === key ? old : { key, item: make() });
}

function place(page, kept) {
  const wanted = [...kept.values()].map((drawn) => drawn.item);
  for (const item of [...page.lines.children]) if (!wanted.includes(item)) item.remove();
  wanted.forEach((item, n) => {
    if (page.lines.children[n] !== item) page.lines.insertBefore(item, page.lines.children[n] || null);
  });
  page.drawn = kept;
}

function showNotice(page, notices) {
  if (notices.length > page.notices) page.notice.textContent = notices.at(-1);
  page.notices = notices.length;
}

function show(state) {
  at("clock").textContent = state.time;
  at("skip").hidden = !state.can_skip;
  for (const phone of state.phones) {
    if (!pages.has(phone.id)) addPage(phone);
    draw(pages.get(phone.id), phone);
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
      await new Promise((resume) => setTimeout(resume, 2000));  // milliseconds; own choice
    }
  }
}

at("skip").addEventListener("click", async () => {
  at("skip").disabled = true;
  try {
    at("came-to").textContent = (await post("/clock/skip", {})).came_to;
  } finally {
    at("skip").disabled = false;
  }
});
watch();
