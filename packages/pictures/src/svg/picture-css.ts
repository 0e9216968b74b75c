/**
 * The look of pictures on screen, by class. Colours are the house's custom properties, so that day and night follow
 * the page: --ink, --ink-soft, --rule, --rule-strong, --sheet, --petrol, --on-petrol, --amber, --amber-soft, --band,
 * --hatch, --wall, --edge.
 */
export const pictureCss = `
.picture{display:block;width:100%;height:auto;font-variant-numeric:tabular-nums;overflow:visible}
.picture text{fill:var(--ink)}
.picture-axis{stroke:var(--rule-strong);stroke-width:2}
.picture-tick{stroke:var(--rule-strong)}
.picture-grid{stroke:var(--rule)}
.picture-band{fill:var(--band);stroke:var(--hatch)}
.picture-hatch{fill:none;stroke:var(--hatch)}
.picture-target{stroke:var(--petrol);stroke-width:1.5}
.picture-beyond{fill:var(--wall);opacity:.12}
.picture-wall{stroke:var(--wall);stroke-width:5}
.picture-base{stroke:var(--ink-soft);stroke-width:1.5;stroke-dasharray:2 3}
.picture-next{fill:none;stroke:var(--petrol);stroke-width:2.5;stroke-dasharray:5 4}
.picture-pull{fill:var(--petrol);stroke:var(--petrol);stroke-width:1.5}
.picture-void{fill:var(--sheet);stroke:var(--petrol);stroke-width:1.5}
.picture-over{fill:var(--amber);stroke:var(--amber);stroke-width:1.5}
.picture-curve-band{fill:var(--petrol);opacity:.13}
.picture-curve{fill:none;stroke:var(--petrol);stroke-width:2.5;stroke-linejoin:round}
.picture-speed-line{fill:none;stroke:var(--edge);stroke-width:1.5;stroke-linejoin:round}
.picture-island{fill:none;stroke:var(--amber);stroke-width:1.25;stroke-linecap:round}
.picture-surge{fill:none;stroke:var(--wall);stroke-width:4;stroke-linejoin:round}
.picture-choke{fill:none;stroke:var(--edge);stroke-width:1.5;stroke-dasharray:2 4}
.picture-goal-line{fill:none;stroke:var(--petrol);stroke-width:2;stroke-dasharray:9 4}
.picture-trail{fill:none;stroke:var(--petrol);stroke-width:2;stroke-linejoin:round;opacity:.75}
.picture-past{fill:var(--sheet);stroke:var(--ink-soft);stroke-width:1.5}
.picture-centre{stroke:var(--ink-soft);stroke-width:1.5}
.picture-limit{fill:none;stroke:var(--ink);stroke-width:1.5;stroke-dasharray:7 4}
.picture-limit-average{fill:none;stroke:var(--petrol);stroke-width:1.5;stroke-dasharray:2 3}
.picture-fired{stroke:var(--amber);stroke-width:1.5}
.picture-cell{fill:var(--sheet);stroke:var(--rule-strong)}
.picture-cell-beyond{fill:var(--sheet);stroke:var(--rule-strong);stroke-width:1.5;stroke-dasharray:4 3}
.picture-cell-over{fill:var(--amber-soft);stroke:var(--amber);stroke-width:2.5}
.picture-range{fill:var(--petrol)}
.picture-range-over{fill:var(--amber)}
.picture-ceiling-mark{stroke:var(--wall);stroke-width:2.5}
.picture-plate{fill:var(--sheet)}
.picture-leader{stroke:var(--ink-soft)}
.picture .picture-pull-text{fill:var(--on-petrol)}
.picture .picture-over-text{fill:var(--sheet)}
.picture .picture-void-text,.picture .picture-next-text,.picture .picture-goal-text{fill:var(--petrol)}
.picture .picture-tick-text,.picture .picture-axis-text,.picture .picture-base-text,.picture .picture-past-text,.picture .picture-centre-text,.picture .picture-unknown-text{fill:var(--ink-soft)}
.picture .picture-note-text,.picture .picture-risk-text,.picture .picture-island-text{fill:var(--amber)}
`.trim();
