import './no-eval.ts';
import 'pdfjs-dist/build/pdf.worker.min.mjs';
