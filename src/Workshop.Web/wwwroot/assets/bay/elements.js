// Parts of a page, made by the modules of the screen.
export function element(name, className, text) {
  const e = document.createElement(name);
  e.className = className;
  e.textContent = text;
  return e;
}

export function button(text, className, then) {
  const b = element("button", className, text);
  b.type = "button";
  b.addEventListener("click", then);
  return b;
}
