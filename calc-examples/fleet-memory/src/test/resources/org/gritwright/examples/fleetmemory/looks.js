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
  // Dates, ids and numbers with a unit that stand on two lines; what was put around them in the page doesn't count here.
  broken: () => {
    const found = [];
    const blocks = [...document.querySelectorAll("p, li, td, th, h1, h2, caption, figcaption, dt, dd")]
      .filter(one => !one.closest("svg") && one.getBoundingClientRect().width > 1 && ![...one.children].some(part =>
        ["P", "UL", "OL", "DIV", "TABLE", "SVG"].includes(part.tagName.toUpperCase())));
    for (const block of blocks) {
      const places = [];
      const walker = document.createTreeWalker(block, NodeFilter.SHOW_TEXT);
      for (let node = walker.nextNode(); node; node = walker.nextNode()) {
        [...node.data].forEach((_, at) => places.push([node, at]));
      }
      const text = places.map(([node, at]) => node.data[at]).join("");
      const wholes = /[0-9]{4}-[0-9]{2}-[0-9]{2}|\b[A-Z]-[0-9]{1,3}\b|[−+±]? ?[0-9]+([.][0-9]+)? (%|ton|lb\/rev|lb|in)(?![a-z\/])/g;
      for (const whole of text.matchAll(wholes)) {
        const range = document.createRange();
        range.setStart(...places[whole.index + whole[0].length - whole[0].trimStart().length]);
        const [last, at] = places[whole.index + whole[0].length - 1];
        range.setEnd(last, at + 1);
        const tops = [...range.getClientRects()].filter(one => one.width > 0).map(one => one.bottom);
        if (Math.max(...tops) - Math.min(...tops) > 8) {
          found.push(`${whole[0]}: ${named(block)}`);
        }
      }
    }
    return found;
  },
  // Letters below a size in CSS pixels, as they come out; those of pictures are drawn larger or smaller than they are stated.
  small: (least, leastInPictures) => boxes(document.body)
    .filter(({one}) => [...one.childNodes].some(part => part.nodeType === Node.TEXT_NODE && part.data.trim()))
    .map(({one}) => {
      const picture = one.closest("svg");
      const scale = picture ? picture.getBoundingClientRect().width / picture.viewBox.baseVal.width : 1;
      return {one, size: parseFloat(getComputedStyle(one).fontSize) * scale, wanted: picture ? leastInPictures : least};
    })
    .filter(({size, wanted}) => size < wanted - 0.01)
    .map(({one, size, wanted}) => `${size} of ${wanted}: ${named(one)}`),
  wordless: () => [...document.querySelectorAll("svg")].filter(one => !one.getAttribute("aria-label")).map(named),
  headless: () => [...document.querySelectorAll("table")].filter(one => !one.caption
    || [...one.tBodies[0].rows].some(row => !row.querySelector("th[scope=row]"))
    || [...one.querySelectorAll("thead th")].some(head => !head.textContent.trim())).map(named),
};
