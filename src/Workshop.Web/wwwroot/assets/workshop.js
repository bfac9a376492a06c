// Small helps on top of pages that work without them.
document.querySelector(".faults")?.focus();

// What a bar of the Diary was dropped on is filled into the form that moves a visit; a person sends it, or does not.
const dropped = new URLSearchParams(location.search);
for (const [name, id] of [["bay", "Move_BayId"], ["technician", "Move_TechnicianId"], ["day", "Move_Day"], ["time", "Move_Time"]]) {
  const field = document.getElementById(id);
  if (field && dropped.has(name)) {
    field.value = dropped.get(name);
  }
}
