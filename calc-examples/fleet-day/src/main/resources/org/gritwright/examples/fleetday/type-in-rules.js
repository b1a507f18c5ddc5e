// What one box may say. Forms, choices, lengths and meanings are read from the document's schema, ranges come with each box.

const data = JSON.parse(document.getElementById("data").textContent);
const COMMA = /,/;

/** Names of others, without characters that move or turn what stands beside them. */
function plain(text) {
  return String(text).replace(/[\u0000-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/g, "\ufffd");
}

function definition(reference) {
  return data.schema.$defs[reference.replace("#/$defs/", "")];
}

/** A field's entry in the schema with that of its type: what the field says of itself comes first. */
function fieldOf(name, path) {
  let field = { $ref: "#/$defs/" + name };
  for (const step of path.split(".")) {
    let holder = field.$ref ? definition(field.$ref) : field;
    if (holder.type === "array") {
      holder = holder.items.$ref ? definition(holder.items.$ref) : holder.items;
      if (/^[0-9]+$/.test(step)) {
        field = holder;
        continue;
      }
    }
    field = holder.properties[step];
  }
  return { ...(field.$ref ? definition(field.$ref) : {}), ...field };
}

/** Paths that the schema wants and an object hasn't. */
function missingIn(name, object) {
  const holder = definition(name);
  if (!holder.required) {
    return [];
  }
  const missing = holder.required.filter((field) => !Object.hasOwn(object, field));
  for (const [field, value] of Object.entries(object)) {
    const inner = holder.properties[field];
    if (inner.$ref && typeof value === "object" && !Array.isArray(value)) {
      missing.push(...missingIn(inner.$ref.replace("#/$defs/", ""), value).map((path) => field + "." + path));
    } else if (Array.isArray(value) && inner.items.$ref) {
      const item = inner.items.$ref.replace("#/$defs/", "");
      value.forEach((one, i) => missing.push(...missingIn(item, one).map((path) => field + "." + i + "." + path)));
    }
  }
  return missing;
}

function hasForm(box, text) {
  return new RegExp(box.schema.pattern, "u").test(text);
}

function formProblem(box, raw) {
  const quoted = "“" + plain(raw) + "”";
  if (COMMA.test(raw)) {
    return /^-?[0-9]+,[0-9]+$/.test(raw)
      ? "write decimals with a point, " + raw.replace(",", ".") + ", and no comma: " + quoted
      : "write numbers without commas, and decimals with a point: " + quoted;
  }
  if (/^-?0+[0-9]+(\.[0-9]+)?$/.test(raw)) {
    return "write it without zeros in front, " + raw.replace(/^(-?)0+(?=[0-9])/, "$1") + ": " + quoted;
  }
  if (/^\.[0-9]+$/.test(raw)) {
    return "write 0" + raw + ": " + quoted;
  }
  if (box.unit && hasForm(box, raw)) {
    return "write the number alone, in " + box.unit + ": " + quoted;
  }
  return "must be a number, such as 45 or 45.5: " + quoted;
}

function ruleProblem(box, number, text) {
  const say = (accepted) => box.name + " must be " + accepted + ": " + text;
  const range = box.range;
  const leftToRule = range && range.lowest > 0 && number <= 0;
  if (range && !leftToRule && !(number >= range.lowest && number <= range.highest)) {
    return range.name + " must be within " + range.words + ": " + text;
  }
  const isWhole = Number.isInteger(number) && number >= 0;
  if (box.rule.startsWith("whole") && !isWhole) {
    return say("a whole number, 0 or more");
  }
  if ((box.rule === "positive" || box.rule === "whole-positive") && !(number > 0)) {
    return say("greater than 0");
  }
  return box.rule === "not-negative" && !(number >= 0) ? say("0 or more") : "";
}

/** A time as it is kept, HH:MM; also without its colon, for who has only digits. */
function timeOf(raw) {
  const found = /^([0-9]{1,2}):?([0-9]{2})$/.exec(raw);
  return found && Number(found[1]) < 24 && Number(found[2]) < 60 ? found[1].padStart(2, "0") + ":" + found[2] : null;
}

function isDay(text) {
  const day = new Date(text + "T00:00:00Z");
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}

function isOffset(text) {
  const found = /^[+-]([0-9]{2}):([0-9]{2})$/.exec(text);
  return text === "Z" || (found !== null && Number(found[1]) * 60 + Number(found[2]) <= 18 * 60 && Number(found[2]) < 60);
}

/** What a box says: nothing, a problem, or the text for the document, with its number if it is one. */
function read(box, raw) {
  const typed = raw.trim();
  if (typed === "") {
    return { isEmpty: true };
  }
  if (box.type === "choice") {
    return { text: typed };
  }
  if (box.type === "time") {
    const time = timeOf(typed);
    return time ? { text: time } : { problem: "must be a time of 24 hours, such as 08:40 or 15:05: “" + plain(typed) + "”" };
  }
  if (box.schema.maxLength && [...typed].length > box.schema.maxLength) {
    return { problem: "must be " + box.schema.description + ": it has " + [...typed].length };
  }
  if (box.type === "text") {
    return { text: typed };
  }
  if (box.type === "date") {
    if (!hasForm(box, typed) || !isDay(typed)) {
      return { problem: "must be a day, such as " + data.document.day + ": “" + plain(typed) + "”" };
    }
    const day = data.document.day;
    const asked = typed.slice(0, 4) === day.slice(0, 4) ? "" : " (is one of both years wrong?)";
    return typed <= day
      ? { text: typed }
      : { problem: box.name + " must be not after the document's own day, " + day + asked + ": " + typed };
  }
  const text = box.unit ? typed + " " + box.unit : typed;
  if (!hasForm(box, text) || !/^-?[0-9.]+([eE][+-]?[0-9]+)?$/.test(typed)) {
    return { problem: formProblem(box, typed) };
  }
  const number = Number(typed);
  const problem = Number.isFinite(number) ? ruleProblem(box, number, text) : "must be a smaller number: “" + plain(typed) + "”";
  return problem ? { problem } : { text, number, typed };
}

/** A number for people, with the digits that were typed. */
function shown(number, ...typed) {
  const digits = Math.max(0, ...typed.map((one) => (one.split(".")[1] || "").length));
  return number.toFixed(Math.min(digits, 9));
}

function rounded(number) {
  return String(Number(number.toPrecision(3)));
}
