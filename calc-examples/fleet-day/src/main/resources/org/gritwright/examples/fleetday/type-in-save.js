// What is saved: the day's document with all that is complete, and a draft of all that was typed.

const DRAFT = "gritwright/type-in-draft";

/** The document as it was planned, and what is complete on the sheets. */
function documentOf(day) {
  const whole = JSON.parse(JSON.stringify(data.document));
  for (const truck of day.trucks) {
    addTruck(whole, truck, evaluate(truck));
  }
  return JSON.stringify(whole, null, 2) + "\n";
}

function addTruck(whole, truck, results) {
  const entry = whole.trucks[truck.sheet.index];
  const notes = entry.notes ? [entry.notes] : [];
  const add = (list, object) => {
    entry[list] = [...(entry[list] || []), object];
  };
  for (const result of results) {
    const { group: it, state } = result;
    if (it.kind === "before" && result.check) {
      addCheck(whole.scales.find((scale) => scale.id === scaleOf(truck).id), result.check);
    }
    if (it.kind === "catch" && state === "complete") {
      add(it.line.isCalibration ? "calibrationCatches" : "verificationCatches", result.object);
    }
    if (it.kind === "road" && state === "complete" && result.object) {
      entry.roadSpeed = result.object;
    }
    if (it.kind === "held" && state === "complete" && result.value) {
      addValue(entry, it.part, result.value);
    }
    if (it.kind === "done" && result.notes) {
      notes.push(result.notes.text);
    }
    if (state === "complete" && result.note) {
      notes.push(result.note);
    }
  }
  if (notes.length > 0) {
    entry.notes = notes.join("; ");
  }
}

/** A scale that several trucks share may have been checked once for all. */
function addCheck(scale, check) {
  const isThere = (scale.checks || []).some((one) => JSON.stringify(one) === JSON.stringify(check));
  if (!isThere) {
    scale.checks = [...(scale.checks || []), check];
  }
}

function addValue(entry, part, value) {
  if (part.held >= 0) {
    Object.assign(entry.inForce[part.held], value);
  } else {
    const setting = part.setting ? { setting: part.setting } : {};
    entry.inForce = [...(entry.inForce || []), { ...value, material: part.material, ...setting }];
  }
}

/** What keeps a sheet from being saved whole: for each part what is wrong or missing in it. */
function unfinished(truck) {
  return evaluate(truck).filter((result) => result.state === "incomplete").map((result) => ({
    key: (result.group.boxes.find((box) => result.problems.has(box.key)) || result.group.boxes[0]).key,
    head: headOf(truck, result.group),
    reasons: [
      ...result.group.boxes.filter((box) => result.problems.has(box.key)).map((box) => box.label + ": " + result.problems.get(box.key)),
      ...result.refusals,
      ...(result.missing.length > 0 ? ["missing: " + result.missing.join("; ")] : []),
    ],
  }));
}

function unanswered(truck) {
  return evaluate(truck).filter((result) => result.state === "complete").flatMap((result) => result.open.map((text) => ({
    key: result.group.boxes[0].key,
    head: headOf(truck, result.group),
    reasons: [text],
  })));
}

function headOf(truck, it) {
  return it.part && truck.sheet.parts.length > 1 && it.kind === "catch" ? it.head + ", " + it.part.point : it.head;
}

function draftOf(day) {
  return JSON.stringify({
    format: DRAFT,
    formatVersion: 1,
    day: data.document.day,
    offset: day.offset,
    trucks: day.trucks.map((truck) => ({
      id: truck.sheet.id,
      points: truck.sheet.parts.map((part) => part.point),
      more: [...truck.more],
      typed: [...truck.values],
      answers: [...truck.answers],
    })),
  }, null, 1) + "\n";
}

/** What was typed where this page has no box: a plan that changed asks for other catches. */
function withoutABox(truck) {
  const boxes = new Set(groupsOf(truck).flatMap((it) => it.boxes.map((box) => box.key)));
  return [...truck.values].filter(([key, text]) => text.trim() !== "" && !boxes.has(key))
    .map(([key, text]) => truck.sheet.id + ", " + key + ": " + text);
}

function isPairs(list, type) {
  return Array.isArray(list) && list.every((pair) => Array.isArray(pair) && pair.length === 2
    && typeof pair[0] === "string" && typeof pair[1] === type);
}

function isDraftOfATruck(truck) {
  return truck !== null && typeof truck === "object" && isPairs(truck.more, "number") && isPairs(truck.typed, "string")
    && truck.more.every(([, count]) => Number.isInteger(count) && count >= 0 && count <= 100)
    && Array.isArray(truck.answers) && truck.answers.every((text) => typeof text === "string");
}

/** Puts a draft into the sheets; says what is wrong with it if it can't be used, and then changes nothing. */
function openDraft(day, text) {
  let draft;
  try {
    draft = JSON.parse(text);
  } catch {
    return "This file is no draft of this page: it is no JSON.";
  }
  if (draft === null || draft.format !== DRAFT || draft.formatVersion !== 1 || !Array.isArray(draft.trucks)
    || !draft.trucks.every(isDraftOfATruck)) {
    return "This file is no draft of this page. A draft is saved with “Save a draft”.";
  }
  if (draft.day !== data.document.day) {
    return "This draft is of " + plain(draft.day) + ", and this page is of " + data.document.day + ".";
  }
  const pairs = draft.trucks.map((one) => [one, day.trucks.find((truck) => truck.sheet.id === one.id)]);
  const points = (truck) => JSON.stringify(truck.sheet.parts.map((part) => part.point));
  const other = pairs.find(([one, truck]) => one.typed.length > 0 && (!truck || points(truck) !== JSON.stringify(one.points)));
  if (other) {
    return "This draft was made for another plan: in this one, " + plain(other[0].id) + " isn’t planned, or for other points.";
  }
  day.offset = isOffset(String(draft.offset)) ? draft.offset : day.offset;
  for (const [one, truck] of pairs.filter(([, truck]) => truck)) {
    truck.more = new Map(one.more);
    truck.values = new Map(one.typed);
    truck.answers = new Set(one.answers);
  }
  return "";
}
