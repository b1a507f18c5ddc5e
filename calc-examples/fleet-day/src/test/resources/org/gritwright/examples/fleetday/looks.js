// What a page looks like once the browser has laid it out, as lists of complaints: an empty list is good.
const looks = {
  name(element) {
    const text = (element.getAttribute("aria-label") || element.textContent || "").trim().replace(/\s+/g, " ");
    return `<${element.tagName.toLowerCase()} class="${element.getAttribute("class") || ""}"> ${text.slice(0, 60)}`;
  },

  // Whatever is not hidden and reaches beyond the window, unless a part of the page scrolls by itself.
  sideways() {
    const width = document.documentElement.clientWidth;
    const found = [];
    if (document.documentElement.scrollWidth > width) {
      found.push(`the page is ${document.documentElement.scrollWidth} wide in a window of ${width}`);
    }
    for (const element of document.body.querySelectorAll("*")) {
      const box = element.getBoundingClientRect();
      if (box.width > 1 && box.height > 1 && (box.right > width + 1 || box.left < -1) && !element.closest(".scroll")) {
        found.push(`${Math.round(box.left)} to ${Math.round(box.right)} of ${width}: ${looks.name(element)}`);
      }
    }
    return found;
  },

  // Parts that scroll by themselves, with more in them than they show.
  scrolling() {
    return [...document.querySelectorAll(".scroll")]
      .filter(element => element.scrollWidth > element.clientWidth + 1)
      .map(looks.name);
  },

  // Words that are cut off, or that run over one another within one element.
  cut() {
    return [...document.body.querySelectorAll("*")]
      .filter(element => {
        const style = getComputedStyle(element);
        const box = element.getBoundingClientRect();
        return box.width > 1 && box.height > 1 && style.display !== "inline" && !element.closest("svg")
          && (style.overflowX !== "visible" || style.overflowY !== "visible") && !element.matches(".scroll, html, body")
          && (element.scrollWidth > element.clientWidth + 1 || element.scrollHeight > element.clientHeight + 1);
      })
      .map(looks.name);
  },

  // The contrast of two colors as WCAG 2.2 defines it ("contrast ratio", "relative luminance").
  contrast(one, other) {
    const luminance = color => {
      const [r, g, b] = color.match(/[\d.]+/g).map(Number).slice(0, 3).map(part => {
        const c = part / 255;
        return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
    return (light + 0.05) / (dark + 0.05);
  },

  // Texts of pictures against every surface that lies beneath one of them: the axe rules leave pictures out.
  faintInPictures() {
    const found = [];
    for (const picture of document.querySelectorAll("svg")) {
      for (const text of picture.querySelectorAll("text")) {
        const at = text.getBoundingClientRect();
        const surfaces = [...picture.querySelectorAll("path, rect")]
          .filter(shape => {
            const box = shape.getBoundingClientRect();
            return getComputedStyle(shape).fill !== "none" && box.left < at.right && box.right > at.left
              && box.top < at.bottom && box.bottom > at.top && box.width > 12 && box.height > 12;
          })
          .map(shape => getComputedStyle(shape).fill);
        for (const surface of ["rgb(255, 255, 255)", ...surfaces]) {
          const ratio = looks.contrast(getComputedStyle(text).fill, surface);
          if (ratio < 4.5) {
            found.push(`${ratio.toFixed(2)} : 1, ${text.textContent} on ${surface}`);
          }
        }
      }
    }
    return found;
  },

  // Every element that the tab key reaches, in its order.
  tabStops() {
    return [...document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex]")]
      .filter(element => element.tabIndex >= 0 && !element.disabled && element.getClientRects().length > 0)
      .map(looks.name);
  },

  // Tables whose cells nobody can tell the meaning of, by the elements alone.
  headless() {
    return [...document.querySelectorAll("table")]
      .filter(table => !table.caption || !table.caption.textContent.trim()
        || [...table.tBodies[0].rows].some(row => !row.querySelector("th[scope=row]"))
        || [...table.querySelectorAll("thead th")].some(head => head.scope !== "col" || !head.textContent.trim()))
      .map(looks.name);
  },

  // Pictures without words.
  wordless() {
    return [...document.querySelectorAll("img, svg")]
      .filter(picture => !(picture.getAttribute("alt") || picture.getAttribute("aria-label") || "").trim())
      .map(looks.name);
  },
};
