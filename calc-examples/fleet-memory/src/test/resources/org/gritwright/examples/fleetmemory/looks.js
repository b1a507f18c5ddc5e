// What a page looks like once it is laid out, as lists of complaints: an empty list is good.
const named = one => `<${one.tagName} class="${one.getAttribute("class") || ""}"> ${one.textContent.trim().slice(0, 60)}`;
const boxes = within => [...within.querySelectorAll("*")].map(one => ({one, box: one.getBoundingClientRect()}))
  .filter(({box}) => box.width > 1 && box.height > 1);
const looks = {
  sideways: () => {
    const width = document.documentElement.clientWidth;
    const whole = document.documentElement.scrollWidth;
    return [...whole > width ? [`the page is ${whole} wide in a window of ${width}`] : [],
      ...boxes(document.body).filter(({box}) => box.right > width + 1 || box.left < -1)
        // Heads that stand beside their numbers are kept for who can't see, in a place of one pixel.
        .filter(({one}) => !one.closest("thead") || getComputedStyle(one.closest("thead")).position !== "absolute")
        .map(({one, box}) => `${box.left} to ${box.right} of ${width}: ${named(one)}`)];
  },
  // Words that reach beyond their picture, which cuts them off.
  cutInPictures: () => [...document.querySelectorAll("svg")].flatMap(picture => {
    const edge = picture.getBoundingClientRect();
    return boxes(picture).filter(({one, box}) => one.tagName === "text"
      && (box.left < edge.left - 1 || box.right > edge.right + 1 || box.top < edge.top - 1 || box.bottom > edge.bottom + 1))
      .map(({one, box}) => `${box.left - edge.left} to ${box.right - edge.left} of ${edge.width}: ${named(one)}`);
  }),
  wordless: () => [...document.querySelectorAll("svg")].filter(one => !one.getAttribute("aria-label")).map(named),
  headless: () => [...document.querySelectorAll("table")].filter(one => !one.caption
    || [...one.tBodies[0].rows].some(row => !row.querySelector("th[scope=row]"))
    || [...one.querySelectorAll("thead th")].some(head => !head.textContent.trim())).map(named),
};
