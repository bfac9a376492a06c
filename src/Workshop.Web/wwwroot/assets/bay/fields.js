// What a form sends: data-body, and on it its fields by data-field, a path such as "places[2].state". What a field is shows its own
// form: a tick, a number by its keyboard, a typed text, else a word of the service, whose first letter is small; data-kind says it
// where it does not: "number", "flag" or "text". An empty field, and a choice that is not taken, say nothing. What stands in data-with
// goes beside the field, into the same part of the body, and says more exactly what a choice of several things means.
export function bodyOf(form, submitter) {
  const body = JSON.parse(form.dataset.body);
  const fields = [...form.querySelectorAll("input[data-field], select[data-field], textarea[data-field]"), submitter].filter(f => f?.dataset.field);
  for (const field of fields) {
    const value = valueOf(field);
    if (value !== undefined) {
      put(body, field.dataset.field, value, field.dataset.with ? JSON.parse(field.dataset.with) : null);
    }
  }
  return body;
}

function valueOf(field) {
  if (field.type === "checkbox") {
    return field.checked;
  }
  const text = field.value.trim();
  if ((field.type === "radio" && !field.checked) || text === "") {
    return undefined;
  }
  switch (field.dataset.kind ?? kindOf(field, text)) {
    case "number": return numberOf(text);
    case "flag": return text === "true";
    case "text": return text;
    default: return text.charAt(0).toLowerCase() + text.slice(1);
  }
}

function kindOf(field, text) {
  if (["decimal", "numeric"].includes(field.inputMode)) {
    return "number";
  }
  if (["true", "false"].includes(text)) {
    return "flag";
  }
  return field.matches("input[type=text], input:not([type]), textarea") ? "text" : "word";
}

// A decimal comma is read as it is meant. What is no number goes as it is typed: the service says so.
function numberOf(text) {
  const number = Number(text.replace(",", "."));
  return Number.isNaN(number) ? text : number;
}

function put(body, path, value, beside) {
  const steps = path.split(/[.[\]]+/).filter(s => s !== "");
  let part = body;
  steps.slice(0, -1).forEach((step, i) => {
    part[step] ??= /^\d+$/.test(steps[i + 1]) ? [] : {};
    part = part[step];
  });
  part[steps.at(-1)] = value;
  Object.assign(part, beside);
}
