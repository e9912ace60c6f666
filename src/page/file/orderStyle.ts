// The style of the place Order: the form, its faults, and the work under way.

export const orderStyle = `.order-form{display:grid;grid-template-columns:repeat(auto-fit,minmax(15rem,1fr));gap:.75rem 1.5rem;align-items:start;margin:1rem 0;padding:1rem;border:1px solid var(--line);border-radius:.4rem;background:var(--panel)}
.order-form fieldset{border:1px solid var(--line);border-radius:.3rem;margin:0;padding:.5rem .75rem;min-width:0;grid-column:1/-1}
.order-form .line,.order-form .patterns,.order .work,.order .call{display:flex;flex-wrap:wrap;gap:.5rem 1rem;align-items:end}
.order-form .field{display:grid;gap:.15rem;min-width:0;flex:0 1 16rem}
.order-form input{background:var(--paper);border:1px solid var(--quiet);border-radius:.3rem;padding:.3rem .5rem;min-height:2.2rem;width:100%;min-width:0}
.order-form [aria-invalid]{border:2px solid var(--orange)}
.order-form .date{display:grid;gap:.3rem}
.order-form .hint{color:var(--quiet);font-size:.85rem}
.order-form .patterns,.order-form .line{margin-bottom:.6rem}
.order [aria-pressed=true]{border-width:2px;border-color:var(--ink);font-weight:600}
.order .wrong p{margin:.1rem 0;padding:.2rem .5rem;border-left:.3rem solid var(--orange);background:var(--tint);font-size:.9rem;overflow-wrap:anywhere}
.order .work{min-height:2.4rem;align-items:center}.order .work p{margin:0}
.order .call{align-items:center}.order .call p,.order .call pre{margin:0;flex-basis:100%}.order .call pre{white-space:pre-wrap;overflow-wrap:anywhere}
.order .applied li{margin:.3rem 0}.order .applied code{overflow-wrap:anywhere}.order .applied button{margin-left:.5rem}
.order .count{font-size:1.1rem}.order .answer:focus{outline:none}
.order .remedy{border-left:.4rem solid var(--link);padding:.3rem .7rem;background:var(--panel)}.order .remedy p,.order .remedy ul{margin:.1rem 0}.order .remedy button{min-height:1.8rem;padding:.1rem .5rem}
.order .old{opacity:.45}
.order .numbers+p,.order p+.numbers{margin-top:.5rem}
.order .numbers{max-height:none}.order .numbers table{font-size:.9rem}.order td button{min-height:1.8rem;padding:.1rem .5rem}
@media print{.order-form,.order .work,.order button{display:none}}`;
