using Microsoft.AspNetCore.Mvc;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Gauges;

public sealed class StudyModel : WorkshopPage
{
    [BindProperty(SupportsGet = true, Name = "studyId")]
    public Guid Id { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Interaction { get; set; }

    [BindProperty]
    public RecordGaugeReading.Request Input { get; set; } = new();

    public GetGaugeTrial.Answer Study { get; private set; } = null!;

    /// <summary>Something is left to be read, and the person may.</summary>
    public bool MayRead { get; private set; }

    /// <summary>What stood in the field, also where it was no number.</summary>
    public string? TypedValue => ModelState.TryGetValue("Input.Value", out var entry) && !ModelState.IsValid ? entry.AttemptedValue : null;

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost() => await May(Policies.Measures)
        ? await Write(
            Input with { Id = Id },
            RecordGaugeReading.Handle,
            written =>
            {
                Done = written.Missing == 0 ? "All readings are in." : $"Written; {written.Missing} to go.";
                return Redirect($"/tooling/gauge-studies/{Id}");
            },
            again: Show)
        : Forbid();

    public async Task<IActionResult> OnPostGiveUp()
    {
        ModelState.Clear();
        return await May(Policies.Measures)
            ? await Write(
                new GiveUpGaugeTrial.Request { Id = Id },
                GiveUpGaugeTrial.Handle,
                _ =>
                {
                    Done = "The study is given up.";
                    return Redirect($"/tooling/gauge-studies/{Id}");
                },
                again: Show,
                prefix: "")
            : Forbid();
    }

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new GetGaugeTrial.Request(Id, Interaction), GetGaugeTrial.Handle)).TryGet(out var study, out var problem))
        {
            return Refused(problem);
        }

        Study = study;
        MayRead = study.GivenUpAt is null && study.Read < study.Wanted && await May(Policies.Measures);
        return Page();
    }
}
