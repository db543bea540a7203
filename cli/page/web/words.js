// What the page says, in the language of the reader. cli/page/words.cpp lists every text, so that
// the catalogues have them.

let words = {};

export async function learn(language) {
  const answer = await fetch("/page/words.json?language=" + encodeURIComponent(language));
  words = answer.ok ? await answer.json() : {};
  document.documentElement.lang = language.slice(0, 2);
}

// A length is not broken: "2 1/8 in".
export const unbroken = (text) => text.replace(/(\d) (?=\d+\/\d)/g, "$1\u00a0").replace(/(\d) (?=(in|mm|cm)\b)/g, "$1\u00a0");

// %1, %2 and so on stand for the values.
export function say(text, ...values) {
  return (words[text] || text).replace(/%(\d)/g, (_, place) => values[place - 1] ?? "");
}
