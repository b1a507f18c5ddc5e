// One catch: its object in the document, what is missing or impossible, and what is odd beside the plan and the other catches.

const SAID_TO_BE_ZEROED = "Every tare is 0. Was the scale set to zero with the empty containers on it?";
/** The hours of the day, and how near the next catch usually is, as the library takes them. */
const FIRST_HOUR = 5;
const LAST_HOUR = 20;
const NEXT = 30 * 60000;
/** Liters in a US gallon, and how near to it a ratio makes one think of the other unit (common practice, no source). */
const GALLON = 3.785;
const NEAR_A_GALLON = 1.15;
/** A density is known more closely than so (common practice, no source). */
const DENSITY = 1.05;

function checkCatch(truck, result, before, held, done) {
  const it = result.group;
  const object = {};
  const at = good(result, "at");
  if (at && !isOffset(truck.day.offset)) {
    result.refusals.push("the offset from UTC at the top of the page must be such as -05:00: “" + plain(truck.day.offset) + "”");
  }
  if (at) {
    object.at = data.document.day + "T" + at.text + ":00" + truck.day.offset;
  }
  if (done.operator) {
    object.operator = done.operator.text;
  }
  object.material = it.part.material;
  if (it.part.setting) {
    object.setting = it.part.setting;
  }
  if (it.line.read) {
    filled(truck, result, object);
  } else {
    object.scale = scaleOf(truck).id;
    weighed(truck, result, object);
  }
  for (const box of it.boxes) {
    const reading = good(result, box.path);
    if (reading && box.path !== "at" && box.path !== "held" && !box.path.startsWith("containers")
      && !box.path.startsWith("read.")) {
      set(object, box.path, reading.text);
    }
  }
  counted(truck, result, object, before);
  if (!it.line.isCalibration) {
    verified(truck, result, object, before, held);
  }
  if (Object.keys(before.conditions).length > 0) {
    object.conditions = { ...before.conditions };
  }
  if (truck.answers.has(it.key + " " + SAID_TO_BE_ZEROED) && result.remarks.includes(SAID_TO_BE_ZEROED)) {
    object.conditions = { ...object.conditions, scaleZeroed: true };
  }
  const gate = good(before, "gate" + it.place);
  if (gate) {
    object.notes = "gate measured " + gate.text;
  }
  for (const path of missingIn(it.definition, object)) {
    if (!result.problems.has(it.key + "/" + path)) {
      result.missing.push(path === "inForce" ? "value in the display" : labelOf(it, path));
    }
  }
  if (!it.line.read && !object.containers) {
    want(result, "containers.0.gross", "containers.0.tare");
  }
  dense(result);
  result.missing = [...new Set(result.missing)];
  result.object = object;
  expected(truck, result);
}

/** The containers that were used; a pail with both boxes blank wasn't. */
function weighed(truck, result, object) {
  const it = result.group;
  const scale = scaleOf(truck);
  const containers = [];
  result.pails = [];
  for (let i = 0; i < it.pails; i++) {
    const paths = ["containers." + i + ".gross", "containers." + i + ".tare"];
    if (paths.every((path) => !has(result, path))) {
      continue;
    }
    want(result, ...paths);
    const name = pailName(it.line, i);
    const [gross, tare] = paths.map((path) => good(result, path));
    if (gross && tare) {
      containers.push({ container: name, gross: gross.text, tare: tare.text });
      result.pails.push({ name, gross, tare });
      if (gross.number < tare.number) {
        result.refusals.push(name + ": gross " + gross.text + " is below its tare " + tare.text + ". Swapped?");
      } else if (gross.number > scale.capacity * (1 + 1e-9)) {
        result.refusals.push("gross of container " + name + " must be at most the capacity of scale " + plain(scale.id)
          + ", " + scale.capacityWords + ": " + gross.text);
      }
    } else {
      result.isPartlyWeighed = true;
    }
  }
  if (containers.length > 0 || result.isPartlyWeighed) {
    object.containers = containers;
  }
  const net = result.pails.reduce((sum, pail) => sum + pail.gross.number - pail.tare.number, 0);
  result.netText = shown(net, ...result.pails.flatMap((pail) => [pail.gross.typed, pail.tare.typed])) + " " + scale.unit;
  if (result.pails.length > 0 && !result.isPartlyWeighed && result.refusals.length === 0) {
    if (Number(result.netText.split(" ")[0]) > 0) {
      result.net = net;
    } else {
      const names = result.pails.map((pail) => pail.name).join(", ");
      result.refusals.push("caught mass in container " + names + " must be greater than 0: 0 " + scale.unit);
    }
    if (result.pails.every((pail) => pail.tare.number === 0)) {
      result.remarks.push(SAID_TO_BE_ZEROED);
    }
  }
}

/** What was read of a liquid, fill by fill; a fill whose box is blank wasn't. */
function filled(truck, result, object) {
  const it = result.group;
  const container = containerOf(truck);
  const id = plain(container.id);
  const paths = it.boxes.map((box) => box.path).filter((path) => path.startsWith("read.fills.") && has(result, path));
  const fills = paths.map((path) => good(result, path)).filter((fill) => fill);
  result.pails = [];
  if (paths.length === 0) {
    want(result, "read.fills.0");
    return;
  }
  object.read = { container: container.id, fills: fills.map((fill) => fill.text) };
  for (const fill of fills) {
    if (fill.number > container.capacity * (1 + 1e-9)) {
      result.refusals.push("volume read in container " + id + " must be at most its highest mark, " + container.capacityWords
        + ": " + fill.text);
    }
  }
  if (paths.length < it.line.pails) {
    result.remarks.push("Written down " + (paths.length === 1 ? "is 1 fill" : "are " + paths.length + " fills") + ", and "
      + it.line.pails + " were planned.");
  }
  const sum = fills.reduce((all, fill) => all + fill.number, 0);
  result.netText = shown(sum, ...fills.map((fill) => fill.typed)) + " " + container.unit;
  if (fills.length === paths.length && result.refusals.length === 0) {
    result.net = sum;
  }
}

/** Of a liquid that was weighed. */
function dense(result) {
  const { line } = result.group;
  if (!line.density) {
    return;
  }
  want(result, "density.value", "density.standardUncertainty");
  const density = good(result, "density.value");
  const within = good(result, "density.standardUncertainty");
  const planned = line.density.value;
  if (density && within && within.number < 0) {
    result.refusals.push("standard uncertainty must be 0 or more and in the unit of " + density.text + ": " + within.text);
  }
  if (density && Math.max(density.number / planned, planned / density.number) > DENSITY) {
    result.remarks.push("The density of " + density.text + " is " + rounded(density.number / planned) + " times the planned one, "
      + planned + density.text.slice(density.typed.length) + ".");
  }
}

function counted(truck, result, object, before) {
  const paths = result.group.boxes.map((box) => box.path).filter((path) => path.startsWith("counted."));
  if (result.group.line.isCalibration || paths.some((path) => has(result, path))) {
    want(result, ...paths);
  }
  const number = (path) => (good(result, "counted." + path) ? good(result, "counted." + path).number : NaN);
  const [start, stop] = [number("start"), number("stop")];
  if (start >= 0 && stop >= 0) {
    const modulus = good(before, "counted.modulus");
    const [from, to] = [object.counted.start, object.counted.stop];
    if (stop === start) {
      result.refusals.push("counter at the stop must be different from the start, as the counter did not move: " + to);
    } else if (stop < start && !modulus) {
      result.refusals.push("counter at the stop must be at least the start, " + from + ", or below it with a stated modulus: "
        + to + ". If the counter went round, say where, before the first catch.");
    } else if (stop < start && start >= modulus.number) {
      result.refusals.push("counter at the start must be below the counter's modulus, " + modulus.text + ": " + from);
    } else if (stop < start) {
      object.counted.modulus = modulus.text;
    }
    result.turns = (stop > start ? stop - start : stop - start + (modulus ? modulus.number : NaN))
      / result.group.part.pulsesPerRevolution;
  } else if (number("revolutions") > 0) {
    result.turns = number("revolutions");
  } else if (number("shaftSpeed") > 0 && number("time") > 0) {
    result.turns = number("shaftSpeed") * number("time") / 60;
  } else if (number("setting") >= 0 && number("time") > 0) {
    const speed = speedAt(truck.sheet.control, number("setting"));
    result.turns = speed * number("time");
    if (speed === 0) {
      result.refusals.push("control setting must be one at which the shaft turns: " + object.counted.setting);
    }
  }
}

function speedAt(table, setting) {
  const above = Math.max(1, table.findIndex((row) => row[0] >= setting));
  const [low, high] = [table[above - 1], table[above]];
  return low[1] + (setting - low[0]) / (high[0] - low[0]) * (high[1] - low[1]);
}

function verified(truck, result, object, before, held) {
  const rates = ratesOf(result.group);
  want(result, ...rates.filter((path) => path !== "testSpeed"));
  const which = good(result, "held");
  const value = which && which.text === "found" ? held.found : held.left;
  if (value) {
    object.inForce = value;
  }
  if (result.group.part.slot) {
    object.slot = result.group.part.slot;
  }
  if (object.indicated) {
    const step = good(before, "indicatedStep");
    if (step) {
      object.indicatedStep = step.text;
    } else {
      result.missing.push("the step of the display’s " + (result.group.part.liquid ? "volume" : "mass") + ", before the first catch");
    }
  }
  const { liquid } = result.group.part;
  if (rates.includes("prewetRate") && rates.some((path) => path.endsWith("Rate") && good(result, path) && good(result, path).number === 0)) {
    result.refusals.push("target rate must be greater than 0: " + liquid.noRate);
  }
  const ways = result.group.line.planned;
  const isOther = (way, path, i) => good(result, path) && Math.abs(good(result, path).number / way[i] - 1) > AS_PLANNED;
  const planned = ways.find((way) => !rates.some((path, i) => path.endsWith("Rate") && isOther(way, path, i))) || ways[0];
  rates.forEach((path, i) => {
    const set = good(result, path);
    if (planned && isOther(planned, path, i)) {
      const unit = set.text.slice(set.typed.length);
      result.remarks.push(labelOf(result.group, path) + " is " + set.text + ", and " + rounded(planned[i]) + unit + " was planned.");
    }
  });
}

/** What is set for a verification, in the order of what is planned. */
function ratesOf(it) {
  return ["targetRate", "testSpeed", "runTime", ...(it.boxes.some((box) => box.path === "prewetRate") ? ["prewetRate"] : [])];
}

/** What the other unit's name would be, where a number is as many times off as a gallon has liters. */
function unitAsked(times, unit) {
  const isNear = (factor) => Math.max(times / factor, factor / times) < NEAR_A_GALLON;
  if (unit === "gal" && isNear(GALLON)) {
    return " Liters?";
  }
  return unit === "L" && isNear(1 / GALLON) ? " Gallons?" : "";
}

/** Slips that show in a net mass, a volume or a count: a decimal point, a pail weighed twice, a digit too many. */
function expected(truck, result) {
  const { line, part } = result.group;
  const ratio = (a, b) => (a > b ? a / b : b / a);
  // What is caught for one scale is planned for that scale.
  const isPlanned = line.read ? containerOf(truck).id === truck.sheet.container : scaleOf(truck).id === truck.sheet.scale;
  const isAsPlanned = isPlanned && line.isCalibration;
  const turns = part.liquid ? part.liquid.turns : "turns";
  if (isAsPlanned && result.turns > 0 && ratio(result.turns, line.revolutions) > TURNS) {
    result.remarks.push("Counted are " + rounded(result.turns) + " " + turns + ", and " + rounded(line.revolutions) + " were planned.");
  }
  if (!(result.net > 0)) {
    return;
  }
  // A kilogram in the unit of what was read or weighed, a liquid's by the density that the document says.
  const { unit, kilogram } = line.read
    ? { unit: containerOf(truck).unit, kilogram: containerOf(truck).cubicMeter / part.liquid.kilogramsPerCubicMeter }
    : scaleOf(truck);
  const net = "The " + (line.read ? "volume" : "net") + " of " + result.netText;
  const set = ratesOf(result.group).map((path) => good(result, path));
  const run = set.every((one) => one) ? set.reduce((product, one) => product * one.number, line.kilograms) : NaN;
  const turned = result.turns > 0 ? result.turns * part.kilogramsPerRevolution : NaN;
  const kilograms = turned > 0 ? turned : run > 0 ? run : line.revolutions * part.kilogramsPerRevolution;
  const usual = kilograms * kilogram;
  const times = result.net / usual;
  const beside = rounded(usual) + " " + unit + (turned > 0 ? " that its " + turns + " would give" : " that were to be expected");
  const twice = result.pails.find((pail, i) => result.pails.slice(0, i).some((other) =>
    other.gross.number === pail.gross.number && other.tare.number === pail.tare.number));
  if (ratio(times, 10) < 1.3 || ratio(times, 0.1) < 1.3) {
    result.remarks.push(net + " is " + rounded(times) + " times the " + beside + ". A decimal point?");
  } else if (ratio(times, 1) > part.usual) {
    result.remarks.push(net + " is " + rounded(times) + " times the " + beside + "." + (line.read ? unitAsked(times, unit) : ""));
  } else if (twice && times > 1.12) {
    result.remarks.push(net + " is " + rounded(times) + " times the " + beside + ", and " + twice.name
      + " weighs what another does. One pail written down twice?");
  }
  const shows = good(result, "indicated");
  if (shows && turned + run > 0) {
    const shownIn = shows.text.slice(shows.typed.length).trim();
    const other = part.liquid
      ? { kilogram: part.liquid.shown / part.liquid.kilogramsPerCubicMeter }
      : data.scales.find((one) => one.unit === shownIn);
    const far = (run > 0 ? run : turned) * (other ? other.kilogram : NaN);
    if (ratio(shows.number, far) > 2) {
      result.remarks.push("The display’s " + (part.liquid ? "volume" : "mass") + " of " + shows.text + " is far from the " + rounded(far)
        + " " + shownIn + " that were to be expected." + (part.liquid ? unitAsked(shows.number / far, shownIn) : ""));
    }
  }
}

function clock(at) {
  return at.slice(11, 16);
}

function isAtNight(at) {
  const hour = Number(at.slice(11, 13));
  return hour < FIRST_HOUR || hour >= LAST_HOUR;
}

/** Times and tares beside those of the truck's other catches, of which the document may have some already. */
function compareCatches(truck, typed) {
  const entry = data.document.trucks[truck.sheet.index];
  const there = [...(entry.calibrationCatches || []), ...(entry.verificationCatches || [])];
  const timed = typed.filter((one) => one.object && one.object.at);
  timed.forEach((one, i) => {
    const at = one.object.at;
    const others = timed.filter((other) => other !== one).map((other) => other.object.at).concat(there.map((other) => other.at));
    const isThere = there.find((other) => Date.parse(other.at) === Date.parse(at)
      && JSON.stringify(masses(other)) === JSON.stringify(masses(one.object)));
    if (isThere) {
      one.refusals.push("this catch of " + clock(at) + " is already in the document");
    } else if (others.some((other) => Date.parse(other) === Date.parse(at))) {
      one.remarks.push("Another catch of this truck has the time " + clock(at) + " too.");
    }
    const earlier = timed.slice(0, i).filter((other) => other.group.place === one.group.place).pop();
    if (earlier && Date.parse(earlier.object.at) > Date.parse(at)) {
      one.remarks.push(clock(at) + " is before " + clock(earlier.object.at) + ", the time of " + earlier.group.head + ".");
    }
    const near = others.find((other) => isAtNight(at) && !isAtNight(other)
      && Math.abs(Math.abs(Date.parse(other) - Date.parse(at)) - 12 * 60 * 60000) <= NEXT);
    if (near) {
      one.remarks.push("The catch of " + clock(at) + " was made in the night; 12 hours off, it is next to that of " + clock(near) + ".");
    }
  });
  const tares = new Map();
  for (const one of typed) {
    for (const pail of one.pails || []) {
      const first = tares.get(pail.name);
      const apart = first ? Math.abs(first.number - pail.tare.number) : 0;
      if (first && apart > TARE_STEPS * scaleOf(truck).division && apart > TARE_PART * first.number) {
        one.remarks.push(pail.name + " weighs " + pail.tare.text + " empty, and " + first.text + " in an earlier catch.");
      }
      tares.set(pail.name, first || pail.tare);
    }
  }
}

function masses(one) {
  return [
    ...(one.containers || []).map((container) => [parseFloat(container.gross), parseFloat(container.tare)]),
    ...(one.read ? one.read.fills.map((fill) => [parseFloat(fill)]) : []),
  ];
}
