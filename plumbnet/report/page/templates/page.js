(function () {
  "use strict";
  document.querySelectorAll("[data-lights]").forEach(function (entry) {
    function light(on) {
      entry.dataset.lights.split(" ").forEach(function (id) {
        var part = document.getElementById(id);
        if (part) { part.classList.toggle("lit", on); }
      });
    }
    entry.tabIndex = 0;
    ["pointerenter", "focusin"].forEach(function (when) { entry.addEventListener(when, function () { light(true); }); });
    ["pointerleave", "focusout"].forEach(function (when) { entry.addEventListener(when, function () { light(false); }); });
  });
})();
