// Small helps on top of pages that work without them.
document.querySelector(".faults")?.focus();
