/** Style of a written report: the same paper and ink as the app, for screen and printer. */
export const REPORT_CSS = `
*{box-sizing:border-box}
body{margin:0 auto;max-width:46rem;padding:24px 16px 48px;background:#fffcf4;color:#1c1813;font:16px/1.45 system-ui,sans-serif;overflow-wrap:break-word}
h1,h2,h3{font-family:Palatino,'Palatino Linotype','URW Palladio L',Georgia,serif;font-weight:600;line-height:1.15;margin:0}
h1{font-size:28px}
h2{font-size:21px;border-top:1px solid #8b7d66;padding-top:12px;margin:28px 0 10px}
h3{font-size:17px;margin:16px 0 6px}
header p,footer,.small,figcaption{color:#4b4236;font-size:14px}
footer{border-top:1px solid #8b7d66;margin-top:32px;padding-top:12px}
p,ul,ol,dl{margin:0 0 10px}
.lead{font-size:18px}
dl div{display:grid;grid-template-columns:9rem 1fr;gap:12px;border-bottom:1px solid #d5c8ae;padding:4px 0}
dt{color:#4b4236}dd{margin:0}
table{width:100%;border-collapse:collapse;margin:0 0 14px;font-size:14px}
caption{text-align:left;font-weight:600;padding:4px 0}
th,td{text-align:left;vertical-align:top;font-weight:400;border-bottom:1px solid #d5c8ae;padding:5px 10px 5px 0}
thead th{color:#4b4236}
tfoot th,tfoot td{font-weight:600}
.n{text-align:right;font-variant-numeric:tabular-nums}td.n{white-space:nowrap}
.caution{border-left:4px solid #861c2c;background:#f5dcd8;padding:8px 12px 8px 28px}
figure{margin:0 0 16px}
.map svg{display:block;margin:0 auto;max-width:100%;height:auto}.map .stacked{display:none}
.key{list-style:none;display:flex;flex-wrap:wrap;gap:4px 18px;margin:6px 0 0;padding:0}.map .key svg{display:inline;vertical-align:-3px}
.photographs{display:grid;grid-template-columns:repeat(auto-fill,minmax(260px,1fr));gap:16px}
.photographs img{width:100%;height:auto;max-height:420px;object-fit:contain;background:#ece3cf}
.shot{position:relative}.shot svg{position:absolute;inset:0;width:100%;height:100%}
.pair>div{display:grid;grid-template-columns:1fr 1fr;gap:8px}.pair img{width:100%;height:auto;background:#ece3cf}.pair p{margin:4px 0;font-size:14px}
.hash{font:11px/1.3 ui-monospace,monospace;overflow-wrap:anywhere}
@media screen and (max-width:34rem){
.map .across{display:none}.map .stacked{display:block}.map .stacked svg{width:min(100%,20rem)}
.pair>div{grid-template-columns:1fr}
.many thead{position:absolute;clip-path:inset(50%)}.many tr,.many th,.many td{display:block;text-align:left}.many tr{border-bottom:1px solid #d5c8ae;padding:5px 0}.many tbody th,.many td{border:0;padding:1px 0}.many tbody th,.many tfoot th{font-weight:600}.many td:empty{display:none}.many td::before{content:attr(data-head) ': ';color:#4b4236;font-weight:400}
}
@media print{body{max-width:none;padding:0;background:none;font-size:10.5pt}h2,h3,caption,thead{break-after:avoid}.short{break-inside:avoid}figure,tr,.caution li{break-inside:avoid}.caution{print-color-adjust:exact;-webkit-print-color-adjust:exact}}
`.trim();
