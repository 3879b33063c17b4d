/* Read by engines of any age: says so where one is too old to read the pane's own script, which the pane needs. */
(function () {
  if (window.carryPaneRan) return;
  var pane = document.getElementById('pane');
  if (!pane) return;
  var text = document.createElement('p');
  text.setAttribute('role', 'alert');
  text.textContent =
    'This version of Excel shows add-ins with a browser engine that is too old for Carry Route Functions: it needs one of 2020 or later (ES2020). Update Excel, or on Windows install Microsoft Edge WebView2, then start Excel again.';
  pane.textContent = '';
  pane.appendChild(text);
})();
