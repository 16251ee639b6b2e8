// What both other scripts need: making an element, and asking the server.

export function element(tag, className, text) {
  const made = document.createElement(tag);
  if (className) made.className = className;
  if (text !== undefined) made.textContent = text;
  return made;
}

export async function post(path, body) {
  const answer = await fetch(path, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(body),
  });
  return answer.json();
}

// Do something with a phone; what it cannot do is said below its lines.
export async function act(page, what, body) {
  const answer = await post(`/phone/${page.id}/${what}`, body);
  page.notice.textContent = answer.error || "";
  return !answer.error;
}
