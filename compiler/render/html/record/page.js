// Elements of the page. What a person wrote goes in as text, never as markup.
function make(tag, attributes = {}, ...children) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (name.startsWith("on")) made.addEventListener(name.slice(2), value);
    else if (value === true) made.setAttribute(name, "");
    else if (value !== false && value !== undefined) made.setAttribute(name, value);
  }
  made.append(...children);
  return made;
}

function button(words, press, attributes = {}) {
  return make("button", { type: "button", onclick: press, ...attributes }, words);
}

function fileName(ending, part = "") {
  const words = [data.plan, data.athlete, part].filter(Boolean).join(" ");
  return `${words.replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "").slice(0, 80) || "sessions"}.${ending}`;
}

function download(text, name, type) {
  const address = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  const link = make("a", { href: address, download: name, hidden: true });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60000);
}

// To the clipboard, or, where the page may not write to it, into a field from which it can be copied.
async function copy(text, told) {
  try {
    await navigator.clipboard.writeText(text);
    told.replaceChildren(say("copied"));
  } catch {
    const field = showText(text, told);
    field.select();
    if (document.execCommand("copy")) told.prepend(say("copied"));
    else told.prepend(say("copy_by_hand"));
  }
}

function showText(text, into) {
  const field = make("textarea", { readonly: true, rows: 6, "aria-label": say("text_to_copy") });
  field.value = text;
  into.replaceChildren(field);
  field.focus();
  return field;
}
