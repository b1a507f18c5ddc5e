// What a part of the sheet says as a whole: complete or not, impossible or odd. The library's own sentences where it has one.

function valueOf(truck, box) {
  return truck.values.has(box.key) ? truck.values.get(box.key) : box.value || "";
}

/** A part with all its boxes read. */
function readGroup(truck, it) {
  const result = { group: it, problems: new Map(), refusals: [], missing: [], remarks: [], said: new Map(), isEmpty: true };
  for (const box of it.boxes) {
    const reading = read(box, valueOf(truck, box));
    result.said.set(box.place || box.path, reading);
    if (!reading.isEmpty && truck.values.has(box.key)) {
      result.isEmpty = false;
    }
    if (reading.problem) {
      result.problems.set(box.key, reading.problem);
    }
  }
  return result;
}

function stateOf(result) {
  if (result.isEmpty) {
    return "empty";
  }
  return result.problems.size + result.refusals.length + result.missing.length > 0 ? "incomplete" : "complete";
}

function labelOf(it, path) {
  const box = it.boxes.find((one) => (one.place || one.path) === path);
  return box ? box.label : path;
}

function has(result, path) {
  const reading = result.said.get(path);
  return reading !== undefined && !reading.isEmpty;
}

/** A reading without a problem. */
function good(result, path) {
  const reading = result.said.get(path);
  return reading && !reading.isEmpty && !reading.problem ? reading : null;
}

function set(object, path, text) {
  const steps = path.split(".");
  const last = steps.pop();
  for (const step of steps) {
    object[step] = object[step] || {};
    object = object[step];
  }
  object[last] = text === "true" ? true : text === "false" ? false : text;
}

function want(result, ...paths) {
  for (const path of paths) {
    if (!has(result, path)) {
      result.missing.push(labelOf(result.group, path));
    }
  }
}

function checkBefore(truck, result) {
  result.isEmpty = result.isEmpty || [...result.said.keys()].every((path) => path === "scale" || path === "container"
    || !has(result, path) || !truck.values.has("before/" + path));
  if (has(result, "testWeight") !== has(result, "reading")) {
    want(result, "testWeight", "reading");
  }
  const isMoist = has(result, "moisture") && has(result, "moistureBasis");
  if (!isMoist && (has(result, "moisture") || has(result, "moistureBasis"))) {
    want(result, "moisture", "moistureBasis");
  }
  const conditions = {};
  for (const box of result.group.boxes) {
    const reading = good(result, box.path);
    if (box.definition === "conditions" && reading && (isMoist || !box.path.startsWith("moisture"))) {
      set(conditions, box.path, reading.text);
    }
  }
  result.conditions = conditions;
  const weight = good(result, "testWeight");
  const shows = good(result, "reading");
  if (weight && shows) {
    result.check = { on: data.document.day, testWeight: weight.text, reading: shows.text };
    const scale = scaleOf(truck);
    // A division, or the 1 % that is taken for a scale of which nobody knows more, as the report asks.
    const accepted = Math.max(scale.division, weight.number / 100 + scale.division / 2);
    if (Math.abs(shows.number - weight.number) > accepted * (1 + 1e-9)) {
      result.remarks.push("The scale shows " + shows.text + " for a test weight of " + weight.text + ".");
    }
  }
  truck.sheet.parts.forEach((part, i) => {
    const measured = good(result, "gate" + i);
    if (measured && Math.abs(measured.number - part.gate.planned) > part.gate.off * (1 + 1e-9)) {
      result.remarks.push("The gate was measured at " + measured.text + "; what was to be set is " + part.setting + ".");
    }
  });
}

function checkHeld(truck, result) {
  const { entry, part } = result.group;
  const found = good(result, "found");
  const left = good(result, "left");
  const since = good(result, "since");
  const before = entry && entry.value.endsWith(" " + part.value.unit) ? Number(entry.value.split(" ")[0]) : NaN;
  const isSame = found !== null && found.number === before;
  if (has(result, "since") && !has(result, "found")) {
    want(result, "found");
  }
  if (has(result, "found") && !isSame) {
    want(result, "since");
    if (found && entry) {
      result.remarks.push("The document says " + entry.value + " as found, the sheet " + found.text + ".");
    }
  }
  const start = found ? found.number : before;
  if (left && start > 0 && (left.number / start > 1.5 || start / left.number > 1.5)) {
    result.remarks.push("As left is " + rounded(left.number / start) + " times as much as as found. A decimal point?");
  }
  result.found = found ? found.text : entry ? entry.value : null;
  result.left = left ? left.text : result.found;
  if (found && (since || isSame)) {
    result.value = since ? { value: found.text, since: since.text } : { value: found.text };
  }
  result.note = left ? "value in the display as left: " + left.text + (part.slot ? ", slot " + part.slot : "") : "";
}

function checkRoad(truck, result) {
  const runs = result.group.boxes.filter((box) => box.path === "pulses");
  const typed = runs.filter((box) => has(result, box.place));
  if (typed.length === 0 && !has(result, "course")) {
    const value = good(result, "inForce");
    result.note = value ? "road-speed value as found: " + value.text : "";
    return;
  }
  want(result, "inForce", "course");
  runs.filter((box, i) => i < 3).forEach((box) => want(result, box.place));
  const course = good(result, "course");
  const value = good(result, "inForce");
  const counts = typed.map((box) => good(result, box.place));
  if (course && value && counts.every((one) => one)) {
    result.object = {
      on: data.document.day,
      inForce: value.text,
      runs: counts.map((one) => ({ course: course.text, pulses: one.text })),
    };
    const numbers = counts.map((one) => one.number);
    if (Math.max(...numbers) > 1.02 * Math.min(...numbers)) {
      result.remarks.push("The runs counted from " + Math.min(...numbers) + " to " + Math.max(...numbers) + " pulses.");
    }
  }
}

function checkDone(truck, result) {
  result.operator = good(result, "operator");
  result.notes = good(result, "notes");
}

/** A truck's sheet as it stands. */
function evaluate(truck) {
  const results = groupsOf(truck).map((it) => readGroup(truck, it));
  const by = (key) => results.find((result) => result.group.key === key);
  checkBefore(truck, by("before"));
  checkDone(truck, by("done"));
  results.filter((one) => one.group.kind === "road").forEach((one) => checkRoad(truck, one));
  results.filter((one) => one.group.kind === "held").forEach((one) => checkHeld(truck, one));
  const catches = results.filter((one) => one.group.kind === "catch");
  for (const one of catches) {
    one.isEmpty = one.isEmpty || one.group.boxes.every((box) => box.path === "held" || !has(one, box.path)
      || valueOf(truck, box) === box.value);
    if (!one.isEmpty) {
      checkCatch(truck, one, by("before"), by("p" + one.group.place + ".held"), by("done"));
    }
  }
  compareCatches(truck, catches.filter((one) => !one.isEmpty));
  for (const one of results) {
    one.state = stateOf(one);
    one.remarks = [...new Set(one.remarks)];
    one.open = one.remarks.filter((text) => !truck.answers.has(one.group.key + " " + text));
  }
  return results;
}
