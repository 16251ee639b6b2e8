// How one chat is written down: a line for each message, with its picture, file, buttons and pencil.
import { act, element } from "./tools.js";

const ASIDES = { sticker: "a sticker", voice: "a voice note", audio: "a recording", video: "a clip" };

// Only lines whose content changed are made anew, so that focus and scrolling stay where they are.
export function draw(page, phone) {
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
  if (grown && nearEnd) toTheEnd(page.lines);
  return grown;
}

// A question with more buttons than fit is shown from its words on.
export function toTheEnd(lines) {
  lines.scrollTop = lines.scrollHeight;
  const last = lines.lastElementChild;
  if (last && last.offsetHeight > lines.clientHeight) last.scrollIntoView({ block: "start" });
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
  if (message.kind === "audio" && message.has_file) parts.push(sound(link, message));
  else if (message.kind in ASIDES) parts.push(aside(link, message));
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
  button.addEventListener("click", () => page.edit(message));
  return button;
}

function picture(link, message) {
  const image = element("img", "picture");
  image.alt = message.text || "A picture";
  image.src = link;
  return image;
}

function sound(link, message) {
  const player = element("audio", "sound");
  player.controls = true;
  player.preload = "none";
  player.setAttribute("aria-label", message.document || ASIDES.audio);
  player.src = link;
  return player;
}

function aside(link, message) {
  const text = element("p", "text aside");
  text.append(message.has_file ? download(link, ASIDES[message.kind]) : ASIDES[message.kind]);
  return text;
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
