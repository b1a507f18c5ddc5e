// A truck's sheet: its boxes in the order of the paper, and what follows from what stands in them.

/** So many steps of a scale, and this part of it, an empty container may weigh differently (common practice, no source). */
const TARE_STEPS = 2;
const TARE_PART = 0.25;
/** What differs by more from the plan was set otherwise (common practice, no source). */
const AS_PLANNED = 0.02;
/** A catch of half or twice the planned turns is worth a question (common practice, no source). */
const TURNS = 2;
const WITHIN = "catch/density.standardUncertainty";
const RUN_DOWN = { "in-both": "in", "in-neither": "out" };

function scaleOf(truck) {
  const id = truck.values.get("before/scale") || truck.sheet.scale;
  return data.scales.find((scale) => scale.id === id);
}

function containerOf(truck) {
  const id = truck.values.get("before/container") || truck.sheet.container;
  return data.graduates.find((container) => container.id === id);
}

/** A box with its place, its entry in the schema and its unit. */
function boxOf(group, truck, template, change) {
  const box = { rule: "", unit: "", ...template, ...change };
  const [name, path] = box.field.includes("/") ? box.field.split("/") : ["", box.field];
  box.path = box.path || path;
  box.definition = name === "catch" ? group.definition : name;
  box.schema = box.definition ? fieldOf(box.definition, box.path) : box.schema || {};
  box.name = box.name || box.label;
  if (box.unit === "@scale") {
    const scale = scaleOf(truck);
    box.unit = scale.unit;
    box.range = scale[box.path.split(".").pop()];
  }
  if (box.unit === "@container") {
    const container = containerOf(truck);
    box.unit = container.unit;
    box.range = container.fills;
  }
  box.type = box.type || typeOf(box);
  box.key = group.key + "/" + (box.place || box.path);
  return box;
}

function typeOf(box) {
  if (box.schema.enum || box.schema.type === "boolean") {
    return "choice";
  }
  return box.path === "at" ? "time" : "number";
}

function optionsOf(box) {
  if (box.options) {
    return box.options;
  }
  return box.schema.enum
    ? box.schema.enum.map((word) => [word, RUN_DOWN[word] || word.replace("-", " ")])
    : [["true", "yes"], ["false", "no"]];
}

function group(key, head, extra) {
  return { key, head, boxes: [], task: "", ...extra };
}

function beforeGroup(truck) {
  const it = group("before", "Before the first catch", { kind: "before" });
  const listed = (list) => list.map((one) => [one.id, plain(one.id) + " (" + one.unit + ")"]);
  if (truck.sheet.scale) {
    it.boxes.push(boxOf(it, truck, { field: "calibration-catch/scale", label: "scale" },
      { type: "choice", options: listed(data.scales), value: truck.sheet.scale }));
  }
  if (truck.sheet.container) {
    it.boxes.push(boxOf(it, truck, { field: "calibration-catch/read.container", label: "container" },
      { type: "choice", place: "container", options: listed(data.graduates), value: truck.sheet.container }));
  }
  for (const box of truck.sheet.before) {
    const isOfCatch = box.field.startsWith("catch/");
    it.boxes.push(boxOf(it, truck, box, isOfCatch ? { field: box.field.replace("catch", "calibration-catch") } : {}));
    if (box.field === "conditions/moisture") {
      it.boxes.push(boxOf(it, truck, { field: "conditions/moistureBasis", label: "moisture in percent of" }));
    }
  }
  truck.sheet.parts.forEach((part, i) => {
    if (part.gate) {
      it.boxes.push(boxOf(it, truck, part.gate.box, {
        place: "gate" + i,
        schema: { ...fieldOf("calibration-catch", "setting"), description: "where the gate stood, by a rule; it is kept in the notes of the catches" },
      }));
    }
  });
  return it;
}

function catchGroup(truck, place, line, key, head, task) {
  const part = truck.sheet.parts[place];
  const definition = line.isCalibration ? "calibration-catch" : "verification-catch";
  const it = group(key, head, { kind: "catch", definition, part, place, line, task });
  // Nobody writes down on paper how certain a density is: the planned hydrometer's stands there, to be changed.
  it.boxes = line.boxes.map((box) => boxOf(it, truck, box, box.field === WITHIN ? { value: line.density.standardUncertainty } : {}));
  if (!line.isCalibration) {
    const at = it.boxes.findIndex((box) => box.path === "indicated");
    it.boxes.splice(at, 0, boxOf(it, truck, { field: "held", label: "display held" }, {
      type: "choice", options: [["left", "value as left"], ["found", "value as found"]], value: "left",
      schema: fieldOf("verification-catch", "inForce"),
    }));
  }
  const pails = line.pails + (truck.more.get(key) || 0);
  for (let i = 0; i < pails && line.read; i++) {
    it.boxes.push(boxOf(it, truck, { field: "catch/read.fills." + i, label: pails > 1 ? pailName(line, i) : "volume", unit: "@container" },
      { name: "volume read in container " + plain(containerOf(truck).id), rule: "positive" }));
  }
  for (let i = 0; i < pails && !line.read; i++) {
    const pail = pails > 1 ? pailName(line, i) + " " : "";
    for (const what of ["gross", "tare"]) {
      it.boxes.push(boxOf(it, truck, { field: "catch/containers." + i + "." + what, label: pail + what, unit: "@scale" },
        { name: what + " of container " + pailName(line, i), rule: "not-negative" }));
    }
  }
  it.pails = pails;
  it.next = [{ key, label: "one more " + line.container }];
  return it;
}

function pailName(line, i) {
  return line.container + " " + (i + 1);
}

function catchGroups(truck, place) {
  const part = truck.sheet.parts[place];
  const groups = [];
  for (const [isCalibration, letter, head] of [[true, "c", "Catch"], [false, "v", "Verification"]]) {
    const lines = part.lines.filter((line) => line.isCalibration === isCalibration);
    const list = "p" + place + "." + letter;
    const count = lines.length + (truck.more.get(list) || 0);
    const another = isCalibration ? { ...lines[0], task: "" } : part.more;
    for (let i = 0; i < count; i++) {
      const line = lines[i] || another;
      groups.push(catchGroup(truck, place, line, list + i, head + " " + (i + 1), line.task));
    }
    if (groups.length > 0) {
      groups[groups.length - 1].next.push({ key: list, label: "one more " + head.toLowerCase() });
    }
  }
  return groups;
}

function heldGroup(truck, place) {
  const part = truck.sheet.parts[place];
  const it = group("p" + place + ".held", "Value in the display" + (truck.sheet.parts.length > 1 ? ": " + part.point : ""),
    { kind: "held", part, place });
  it.entry = part.held >= 0 ? data.document.trucks[truck.sheet.index].inForce[part.held] : null;
  it.task = it.entry
    ? "The document says " + it.entry.value + " since " + it.entry.since + ". As found may stay blank if that is so."
    : "The document says none.";
  it.boxes.push(boxOf(it, truck, part.value, { place: "found", label: part.value.label + ", as found" }));
  it.boxes.push(boxOf(it, truck, { field: "in-force/since", label: "as found: held since" },
    { type: "date", name: "date of the calibration in force" }));
  it.boxes.push(boxOf(it, truck, part.value, { place: "left", label: part.value.label + ", as left" }));
  return it;
}

function roadGroup(truck) {
  const it = group("road", "Road speed, measured course", { kind: "road", definition: "road-speed" });
  if (data.document.trucks[truck.sheet.index].roadSpeed) {
    it.task = "Already in the document.";
    return it;
  }
  it.boxes.push(boxOf(it, truck, truck.sheet.roadInForce, { label: "value in the display, as found" }));
  let run = 0;
  for (const box of truck.sheet.road) {
    it.boxes.push(boxOf(it, truck, box, box.field.endsWith("pulses") ? { place: "run" + ++run } : {}));
  }
  for (let more = truck.more.get("road") || 0; more > 0; more--) {
    const last = truck.sheet.road[truck.sheet.road.length - 1];
    it.boxes.push(boxOf(it, truck, last, { place: "run" + ++run, label: "run " + run }));
  }
  it.next = [{ key: "road", label: "one more run" }];
  return it;
}

function doneGroup(truck) {
  const it = group("done", "Done", { kind: "done" });
  it.boxes.push(boxOf(it, truck, { field: "calibration-catch/operator", label: "at the controls" }, { type: "text" }));
  it.boxes.push(boxOf(it, truck, { field: "truck/notes", label: "notes" }, { type: "text" }));
  const notes = data.document.trucks[truck.sheet.index].notes;
  it.task = notes ? "Notes already in the document: " + notes : "";
  return it;
}

/** The step in which the display showed mass or volume in an earlier catch. */
function stepBefore(truck) {
  const unit = " " + truck.sheet.indicatedStep.unit;
  const steps = (data.document.trucks[truck.sheet.index].verificationCatches || []).map((one) => one.indicatedStep || "");
  return (steps.find((step) => step.endsWith(unit)) || "").replace(unit, "");
}

/** All boxes of a truck, in the order of the paper. */
function groupsOf(truck) {
  const places = truck.sheet.parts.map((part, i) => i);
  const groups = [beforeGroup(truck)];
  if (truck.sheet.parts.some((part) => part.more)) {
    groups[0].boxes.push(boxOf({ key: "before", definition: "verification-catch" }, truck, truck.sheet.indicatedStep,
      { value: stepBefore(truck) }));
  }
  places.forEach((place) => groups.push(...catchGroups(truck, place)));
  places.forEach((place) => groups.push(heldGroup(truck, place)));
  if (truck.sheet.roadInForce) {
    groups.push(roadGroup(truck));
  }
  groups.push(doneGroup(truck));
  return groups;
}
