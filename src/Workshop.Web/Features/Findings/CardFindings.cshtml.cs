using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.EngineModels;
using Workshop.Domain.JobCards;
using Workshop.Web.Data;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Photos;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Findings;

/// <summary>What was found on a visit, with its photos; in the bay somebody records another.</summary>
[RequestSizeLimit(PhotosApi.LargestSend)]
[RequestFormLimits(MultipartBodyLengthLimit = PhotosApi.LargestSend)]
public sealed class CardFindingsModel(WorkshopDbContext db) : PhotoPage
{
    [BindProperty(SupportsGet = true)]
    public int Number { get; set; }

    [BindProperty]
    public RecordFinding.Request Input { get; set; } = new();

    public CardHead Head { get; private set; } = null!;

    public ListFindings.Answer Found { get; private set; } = null!;

    /// <summary>Service items that are not under way: one may put it right.</summary>
    public IReadOnlyList<ServiceItem> Items { get; private set; } = [];

    public bool MayRecord { get; private set; }

    public bool MayAdd { get; private set; }

    public bool MayRemove { get; private set; }

    private string Here => $"/job-cards/{Number}/findings";

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPost()
    {
        if (!await May(Policies.Measures))
        {
            return Forbid();
        }

        // The pictures are looked at before anything is written: a finding is recorded with all of them or not at all.
        if (await Refuse(Files))
        {
            return await Show();
        }

        Guid? made = null;
        var answer = await Write(
            Input with { Number = Number },
            RecordFinding.Handle,
            recorded =>
            {
                made = recorded.Id;
                Done = "The finding is recorded. It waits for a price, and for the owner's answer.";
                return Redirect($"/findings/{recorded.Id}");
            },
            again: Show);
        return made is { } finding && Files is { Count: > 0 }
            ? await Add(Number, finding, () => answer, () => Task.FromResult(answer))
            : answer;
    }

    public Task<IActionResult> OnPostPhotos() => Add(Number, null, () => Redirect(Here), Show);

    public Task<IActionResult> OnPostRemove(Guid photo, uint? version) => Remove(photo, version, () => Redirect(Here), Show);

    private async Task<IActionResult> Show()
    {
        if (!(await CardHead.Load(db, Number, HttpContext.RequestAborted)).TryGet(out var head, out var problem)
            || !(await OpenCard.Find(db, Number, HttpContext.RequestAborted)).TryGet(out var open, out problem)
            || !(await Read(new ListFindings.Request(Number), ListFindings.Handle)).TryGet(out var found, out problem))
        {
            return Refused(problem);
        }

        (Head, Found) = (head, found);
        Items = [.. open.Specification.ServiceItems.Where(i => CardRules.RefuseStart(Number, open.Specification, open.Items, i.Code) is null)];
        var here = head.Card.State == JobCardState.CheckedIn;
        MayRecord = here && await May(Policies.Measures);
        MayAdd = here && await May(Policies.TellsProgress);
        MayRemove = await May(Policies.Manages);
        return Page();
    }
}
