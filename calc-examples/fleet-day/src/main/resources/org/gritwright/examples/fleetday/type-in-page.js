// The page itself: it shows one truck at a time, and says beside each box what is wrong with it.

const day = { offset: "" };
day.trucks = data.sheets.map((sheet) => ({ sheet, day, values: new Map(), answers: new Set(), more: new Map(), left: new Set() }));
let at = 0;
let isDirty = false;
const views = new Map();

function element(name, attributes, ...children) {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes || {})) {
    if (value !== null && value !== undefined) {
      made.setAttribute(key, value);
    }
  }
  made.append(...children);
  return made;
}

const byId = (id) => document.getElementById(id);

function button(label, act, attributes) {
  const made = element("button", { type: "button", ...attributes }, label);
  made.addEventListener("click", act);
  return made;
}

function inputOf(truck, box) {
  const describedBy = "note-" + box.key;
  const hint = box.schema.description || "";
  const common = { id: box.key, title: hint, "aria-describedby": describedBy, autocomplete: "off" };
  let input;
  if (box.type === "choice") {
    const options = optionsOf(box).map(([value, label]) => element("option", { value }, label));
    input = element("select", common, ...(box.value ? [] : [element("option", { value: "" }, "")]), ...options);
  } else {
    const mode = { number: "decimal", time: "numeric" }[box.type] || "text";
    const example = { time: "HH:MM", date: "YYYY-MM-DD" }[box.type];
    input = element("input", { ...common, type: "text", inputmode: mode, placeholder: example, spellcheck: "false" });
  }
  input.value = valueOf(truck, box);
  input.addEventListener("focus", () => {
    byId("hint").textContent = plain(box.label + (hint ? ": " + hint : ""));
  });
  const take = () => {
    truck.values.set(box.key, input.value);
    isDirty = true;
    byId("said").replaceChildren();
  };
  input.addEventListener("input", take);
  // A choice may be told of by this alone.
  input.addEventListener("change", () => {
    take();
    if (box.key === "before/scale" || box.key === "before/container") {
      truck.left.add(box.key);
      showTruck(box.key);
    }
  });
  input.addEventListener("blur", () => {
    if (box.type === "time" && timeOf(input.value.trim())) {
      input.value = timeOf(input.value.trim());
      truck.values.set(box.key, input.value);
    }
    if (input.value.trim() === "" && !box.value) {
      truck.values.delete(box.key);
    }
    truck.left.add(box.key);
    update(truck);
  });
  return input;
}

function boxView(truck, box) {
  const note = element("p", { class: "problem", id: "note-" + box.key, role: "alert" });
  const input = inputOf(truck, box);
  const view = element("div", { class: "entry" + (box.type === "text" ? " long" : "") },
    element("label", { for: box.key }, plain(box.label)),
    element("div", { class: "field" }, input, ...(box.unit ? [element("span", { class: "unit" }, box.unit)] : [])), note);
  views.set(box.key, { input, note });
  return view;
}

function groupView(truck, it) {
  const notes = element("ul", { class: "notes", id: "notes-" + it.key, "aria-live": "polite" });
  const buttons = (it.next || []).map((one) => button(one.label, () => addOne(truck, one.key), {
    id: "more-" + one.key,
  }));
  const view = element("fieldset", { id: "group-" + it.key }, element("legend", {}, plain(it.head)),
    ...(it.task ? [element("p", { class: "task" }, plain(it.task))] : []),
    element("div", { class: "entries" }, ...it.boxes.map((box) => boxView(truck, box))), notes,
    ...(buttons.length > 0 ? [element("div", { class: "more" }, ...buttons)] : []));
  return view;
}

/** One more pail, run or catch; the next to be typed is its first box. */
function addOne(truck, key) {
  const before = new Set(views.keys());
  truck.more.set(key, (truck.more.get(key) || 0) + 1);
  isDirty = true;
  showTruck();
  const added = [...views.keys()].find((one) => !before.has(one));
  (views.get(added) || { input: byId("more-" + key) }).input.focus();
}

function catchesThere(truck) {
  const entry = data.document.trucks[truck.sheet.index];
  const lines = [];
  for (const [list, word] of [["calibrationCatches", "Catch"], ["verificationCatches", "Verification"]]) {
    for (const one of entry[list] || []) {
      lines.push(word + " of " + clock(one.at) + ": " + one.material + (one.setting ? ", gate " + one.setting : "") + ", "
        + (one.read ? one.read.fills.join(" and ") + " in " + one.read.container
          : (one.containers || []).map((pail) => pail.gross + " less " + pail.tare).join(", ")));
    }
  }
  return lines;
}

function showTruck(focused) {
  const truck = day.trucks[at];
  const form = byId("sheet");
  views.clear();
  const there = catchesThere(truck);
  const parts = [element("h2", { id: "truck", tabindex: "-1" }, plain(truck.sheet.id)),
    element("p", { class: "soft" }, "On the truck: " + plain(truck.sheet.onTruck) + ".")];
  if (there.length > 0) {
    parts.push(element("details", { class: "there", open: "" }, element("summary", {},
      "Already in the document, and kept as it is (" + there.length + ")"),
    element("ul", {}, ...there.map((line) => element("li", {}, plain(line))))));
  }
  truck.sheet.parts.filter((part) => part.lines.length === 0).forEach((part) => parts.push(element("p", { class: "task" },
    plain(part.point) + ": none of the planned weighing methods will do, so there is no sheet to type in.")));
  let place = -1;
  for (const it of groupsOf(truck)) {
    if (it.kind === "catch" && it.place !== place) {
      place = it.place;
      parts.push(element("h3", {}, "What to catch: " + plain(it.part.point)),
        element("p", { class: "task" }, plain(it.part.task)));
    }
    parts.push(groupView(truck, it));
  }
  form.replaceChildren(...parts);
  update(truck);
  if (focused) {
    views.get(focused).input.focus();
  }
}

/** Keeps what stands there already, so that the focus stays where it is. */
function keep(list, wanted, make) {
  const there = new Map([...list.children].map((item) => [item.dataset.key, item]));
  const items = wanted.map((one) => there.get(one.key) || make(one));
  items.forEach((item, i) => {
    item.dataset.key = wanted[i].key;
    if (list.children[i] !== item) {
      list.insertBefore(item, list.children[i] || null);
    }
  });
  while (list.children.length > items.length) {
    list.lastChild.remove();
  }
}

function remarkView(truck, key, text) {
  const box = element("input", { type: "checkbox" });
  box.checked = truck.answers.has(key);
  box.addEventListener("change", () => {
    if (box.checked) {
      truck.answers.add(key);
    } else {
      truck.answers.delete(key);
    }
    isDirty = true;
    update(truck);
  });
  return element("li", { class: "remark" }, element("span", {}, plain(text)), " ",
    element("label", {}, box, " yes, so it was"));
}

function notesOf(truck, result) {
  const it = result.group;
  const boxes = it.boxes.map((box) => box.key);
  const isLeft = boxes.some((key) => truck.left.has(key));
  const isDone = isLeft && !boxes.includes(document.activeElement && document.activeElement.id);
  const notes = isLeft ? result.refusals.map((text) => ({ key: "refused " + text, text, kind: "problem" })) : [];
  if (isLeft) {
    result.remarks.forEach((text) => notes.push({ key: it.key + " " + text, text, kind: "remark" }));
  }
  if (!result.isEmpty && isDone && result.missing.length > 0) {
    const text = "Missing: " + result.missing.join("; ") + ".";
    notes.push({ key: text, text, kind: "missing" });
  }
  if (it.kind === "catch" && result.net > 0 && result.state === "complete") {
    const text = "Complete. " + (it.line.read ? "Volume " : "Net ") + result.netText + ".";
    notes.push({ key: text, text, kind: "complete" });
  }
  return notes;
}

function update(truck) {
  const results = evaluate(truck);
  for (const result of results) {
    for (const box of result.group.boxes) {
      const view = views.get(box.key);
      const problem = truck.left.has(box.key) ? result.problems.get(box.key) || "" : "";
      if (view && view.note.textContent !== problem) {
        view.note.textContent = problem;
      }
      if (view) {
        view.input.setAttribute("aria-invalid", problem ? "true" : "false");
      }
    }
    const list = byId("notes-" + result.group.key);
    if (list) {
      keep(list, notesOf(truck, result), (one) => (one.kind === "remark"
        ? remarkView(truck, one.key, one.text)
        : element("li", { class: one.kind }, plain(one.text))));
    }
  }
  showStatus(truck, results);
}

function statusOf(results) {
  const count = (state) => results.filter((one) => one.state === state).length;
  const catches = results.filter((one) => one.group.kind === "catch");
  const done = catches.filter((one) => one.state === "complete").length;
  const open = results.reduce((sum, one) => sum + one.open.length, 0);
  if (count("incomplete") + count("complete") === 0) {
    return ["empty", "nothing typed"];
  }
  const words = [done + " of " + catches.length + " catches"];
  if (count("incomplete") > 0) {
    words.push(count("incomplete") + " unfinished");
  }
  if (open > 0) {
    words.push(open + (open === 1 ? " question" : " questions"));
  }
  return [count("incomplete") > 0 ? "unfinished" : "done", words.join(", ")];
}

function showStatus(truck, results) {
  const tab = byId("go-" + day.trucks.indexOf(truck));
  const [state, text] = statusOf(results);
  tab.className = state;
  tab.lastChild.textContent = text;
}

function go(place, key) {
  byId("go-" + at).removeAttribute("aria-current");
  at = place;
  byId("go-" + at).setAttribute("aria-current", "true");
  showTruck(key);
  if (!key) {
    byId("truck").focus();
    byId("truck").scrollIntoView();
  }
}

function download(name, text) {
  const link = element("a", { href: URL.createObjectURL(new Blob([text], { type: "application/json" })), download: name });
  byId("said").append(element("p", {}, "Saved as " + name + ", where the browser keeps what it downloads. "));
  link.textContent = "Save it once more";
  byId("said").lastChild.append(link);
  link.click();
}

function listOf(title, truckItems) {
  const items = truckItems.flatMap(([place, entries]) => entries.map((one) => element("li", {},
    button(plain(day.trucks[place].sheet.id + ", " + one.head), () => go(place, one.key), { class: "link" }),
    ": " + plain(one.reasons.join("; ")))));
  return items.length === 0 ? [] : [element("h3", {}, title), element("ul", { class: "open" }, ...items)];
}

function save() {
  const said = byId("said");
  day.trucks.forEach((truck) => groupsOf(truck).forEach((it) => it.boxes.forEach((box) => truck.left.add(box.key))));
  update(day.trucks[at]);
  const open = day.trucks.map((truck, i) => [i, unfinished(truck)]);
  const odd = day.trucks.map((truck, i) => [i, unanswered(truck)]);
  const left = open.reduce((sum, [, list]) => sum + list.length, 0);
  said.replaceChildren(...listOf("Unfinished: not in the document until they are complete", open),
    ...listOf("Looks like a slip, and isn’t answered; saved as it is", odd));
  if (left === 0) {
    saveDay();
    isDirty = false;
    return;
  }
  said.append(element("p", { class: "more" }, button("Save the day without what is unfinished", saveDay, { id: "save-part" }), " ",
    button("Save a draft of all that was typed", saveDraft)));
  said.focus();
  said.scrollIntoView();
}

function saveDay() {
  download("fleet-day-" + data.document.day + ".json", documentOf(day));
}

function saveDraft() {
  byId("said").replaceChildren();
  download("type-in-draft-" + data.document.day + ".json", draftOf(day));
  isDirty = false;
}

function tell(...parts) {
  byId("said").replaceChildren(element("p", { class: "told" }, ...parts));
  byId("said").focus();
}

function openFile(file) {
  file.text().then((text) => {
    const put = () => {
      const problem = openDraft(day, text);
      day.trucks.forEach((truck) => truck.values.forEach((value, key) => truck.left.add(key)));
      byId("offset").value = day.offset;
      day.trucks.forEach((truck) => showStatus(truck, evaluate(truck)));
      showTruck();
      isDirty = isDirty && problem !== "";
      const lost = day.trucks.flatMap(withoutABox).map(plain);
      tell(problem || "The draft " + plain(file.name) + " is open."
        + (lost.length > 0 ? " There is no box here for " + lost.join("; ") + "." : ""));
    };
    if (isDirty) {
      tell("Something is typed here that isn’t saved. ", button("Open the draft in its place", put, { id: "open-anyway" }));
    } else {
      put();
    }
  }, () => tell("The browser can’t read " + plain(file.name) + "."));
}

/** The offset of the catches in the document, or else that of this computer on that day. */
function offsetOfTheDay() {
  const entries = data.document.trucks.flatMap((truck) => [...(truck.calibrationCatches || []), ...(truck.verificationCatches || [])]);
  if (entries.length > 0) {
    return [/(Z|[+-][0-9]{2}:[0-9]{2})$/.exec(entries[0].at)[0], "as in the catches of the document"];
  }
  const [year, month, date] = data.document.day.split("-").map(Number);
  const minutes = -new Date(year, month - 1, date, 12).getTimezoneOffset();
  const two = (number) => String(Math.floor(number)).padStart(2, "0");
  return [(minutes < 0 ? "-" : "+") + two(Math.abs(minutes) / 60) + ":" + two(Math.abs(minutes) % 60), "by the clock of this computer"];
}

function showOffset() {
  const input = byId("offset");
  const check = () => {
    day.offset = input.value.trim();
    const problem = isOffset(day.offset) ? "" : "must be such as -05:00: “" + plain(day.offset) + "”";
    byId("note-offset").textContent = problem;
    input.setAttribute("aria-invalid", problem ? "true" : "false");
  };
  const [offset, source] = offsetOfTheDay();
  input.value = offset;
  byId("offset-source").textContent = source;
  input.addEventListener("input", () => {
    day.offset = input.value.trim();
  });
  input.addEventListener("blur", () => {
    check();
    update(day.trucks[at]);
  });
  check();
}

/** Enter goes on to the next box, whatever buttons lie between. */
document.addEventListener("keydown", (event) => {
  const target = event.target;
  if (event.key !== "Enter" || event.isComposing || !target.matches("#sheet input, #sheet select, #offset")) {
    return;
  }
  event.preventDefault();
  const boxes = [...document.querySelectorAll("#offset, #sheet input:not([type=checkbox]), #sheet select")];
  const next = target.type === "checkbox"
    ? boxes.find((box) => target.compareDocumentPosition(box) & Node.DOCUMENT_POSITION_FOLLOWING)
    : boxes[boxes.indexOf(target) + 1];
  (next || byId("next")).focus();
});

window.addEventListener("beforeunload", (event) => {
  if (isDirty) {
    event.preventDefault();
  }
});

showOffset();
day.trucks.forEach((truck, i) => byId("trucks").append(element("li", {},
  button("", () => go(i), { id: "go-" + i }))));
day.trucks.forEach((truck, i) => byId("go-" + i).append(element("b", {}, plain(truck.sheet.id)), element("span", {}, "")));
byId("next").addEventListener("click", () => go((at + 1) % day.trucks.length));
byId("save").addEventListener("click", save);
byId("draft").addEventListener("click", saveDraft);
byId("file").addEventListener("change", (event) => {
  if (event.target.files.length > 0) {
    openFile(event.target.files[0]);
    event.target.value = "";
  }
});
if (day.trucks.length > 0) {
  byId("app").hidden = false;
  byId("bar").hidden = false;
  day.trucks.forEach((truck) => showStatus(truck, evaluate(truck)));
  byId("go-0").setAttribute("aria-current", "true");
  showTruck();
}
