#include "render/proof/page_text.h"

namespace mullion::proof {

// Keys that zoom work where a picture has the focus (WCAG 2.2, 2.1.4); the mark of the focus is
// light inside dark, so that one of the two stands out from any picture (2.4.11 and 1.4.11).
//
// Contrast on white (WCAG 2.2, 1.4.3 and 1.4.11): #262421 15.5, #69655e 5.7, #1f5f7a 6.9.
const char* const page_style = R"css(
:root{color-scheme:light}
*{box-sizing:border-box}
body{margin:0;background:#fff;color:#262421;font:16px/1.5 Lato,system-ui,sans-serif}
main,header,footer{max-width:70rem;margin:0 auto;padding:0 1.25rem}
header{padding-top:2rem}
h1{font-weight:300;font-size:clamp(1.7rem,5vw,2.6rem);line-height:1.15;margin:.2em 0}
h2{font-size:.8rem;letter-spacing:.12em;text-transform:uppercase;color:#69655e;margin:2rem 0 .5rem}
.shop{font-weight:700}
.facts,.quiet{color:#69655e}
.tools{display:flex;flex-wrap:wrap;gap:.5rem 1rem;align-items:center;margin:1rem 0}
button{font:inherit;min-width:2.75rem;min-height:2.75rem;border:1px solid #69655e;border-radius:.4rem;background:#fff;color:inherit;padding:0 .8rem;cursor:pointer}
label{display:inline-flex;align-items:center;gap:.4rem;min-height:2.75rem}
input[type=checkbox]{width:1.25rem;height:1.25rem;accent-color:#1f5f7a}
:focus-visible{outline:3px solid #1f5f7a;outline-offset:2px}
.stage{overflow:auto;max-height:85vh;border-radius:.3rem}
.stage>svg{display:block;width:100%;height:auto}
.choices{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,20rem),1fr));gap:1.25rem}
.choice{min-width:0;margin:0}
.choice[hidden]{display:none}
figcaption{padding:.5rem 0}
figcaption p{margin:.3rem 0}
.letter{font-size:1.4rem}
.wide{overflow-x:auto}
.materials,.ticks{list-style:none;margin:.5rem 0;padding:0}
.materials li{display:flex;align-items:center;gap:.7rem;margin:.4rem 0;line-height:1.25}
.chip{flex:none;width:1.9rem;height:1.9rem;border:1px solid #69655e}
small{color:#69655e;font-size:.85rem}
.ticks li::before{content:"";display:inline-block;width:.8rem;height:.8rem;border:1px solid #262421;margin-right:.5rem}
.opening{fill:transparent;cursor:pointer;vector-effect:non-scaling-stroke}
.opening:hover,.opening:focus{fill:rgba(31,95,122,.14);stroke:#fff;stroke-width:4;outline:3px solid #1f5f7a}
.told{min-height:1.6em;font-size:1.05rem;margin:.6rem 0}
table{border-collapse:collapse;width:100%;max-width:44rem}
th,td{text-align:left;padding:.35rem .8rem .35rem 0;border-bottom:1px solid #cfcbc3;font-weight:400}
.amount{text-align:right;white-space:nowrap}
.sizes span{display:inline-block;white-space:nowrap}
.sizes .quiet{min-width:7.5rem}
.sizes td{text-align:right;padding-right:0}
tr.total>*{font-weight:700}
.sign{display:flex;gap:2rem;margin:3.5rem 0 1rem}
.sign span{flex:3;border-top:1px solid #262421;color:#69655e;font-size:.85rem}
.sign span+span{flex:1}
footer{padding-bottom:2rem;color:#69655e;font-size:.9rem}
@media print{
.tools,.told{display:none}
.choices{grid-template-columns:repeat(auto-fit,minmax(min(100%,5cm),1fr))}
body{font-size:10pt}
.stage{overflow:visible;max-height:none}
.stage>svg{width:100%!important;max-height:15cm}
.choice,table,.sign{break-inside:avoid}
*{-webkit-print-color-adjust:exact;print-color-adjust:exact}
}
)css";

const char* const page_script = R"js(
(function () {
  'use strict';
  var told = document.getElementById('told');
  var zoom = 1;
  function setZoom(value) {
    zoom = Math.min(6, Math.max(1, value));
    document.querySelectorAll('.stage>svg').forEach(function (svg) {
      svg.style.width = Math.round(zoom * 100) + '%';
    });
    document.getElementById('zoom-now').textContent = Math.round(zoom * 100) + ' %';
  }
  function tell(opening) { told.textContent = opening.getAttribute('aria-label'); }
  document.querySelectorAll('.opening').forEach(function (opening) {
    ['mouseenter', 'focus', 'click'].forEach(function (event) {
      opening.addEventListener(event, function () { tell(opening); });
    });
    opening.addEventListener('keydown', function (event) {
      if (event.key === 'Enter' || event.key === ' ') { event.preventDefault(); tell(opening); }
    });
  });
  document.querySelectorAll('input[data-shows]').forEach(function (box) {
    box.addEventListener('change', function () {
      document.querySelectorAll('[data-part="' + box.dataset.shows + '"]').forEach(function (part) {
        if (part.tagName === 'FIGURE') { part.hidden = !box.checked; return; }
        part.style.display = box.checked ? '' : 'none';
      });
    });
  });
  document.getElementById('zoom-in').addEventListener('click', function () { setZoom(zoom * 1.25); });
  document.getElementById('zoom-out').addEventListener('click', function () { setZoom(zoom / 1.25); });
  document.getElementById('zoom-fit').addEventListener('click', function () { setZoom(1); });
  document.querySelectorAll('.stage').forEach(function (stage) {
    stage.addEventListener('keydown', function (event) {
      if (event.ctrlKey || event.metaKey || event.altKey) { return; }
      if (event.key === '+') { setZoom(zoom * 1.25); }
      if (event.key === '-') { setZoom(zoom / 1.25); }
      if (event.key === '0') { setZoom(1); }
    });
  });
})();
)js";

}  // namespace mullion::proof
