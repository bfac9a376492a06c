using Microsoft.AspNetCore.Mvc;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Estimates;
using Workshop.Web.Data;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Paper;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Estimates;

/// <summary>An estimate as it was made: to read, to print, to answer.</summary>
public sealed class EstimateModel(WorkshopDbContext db, IClock clock, PaperAddress address, PdfFiles files) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public Guid EstimateId { get; set; }

    [BindProperty]
    public AnswerEstimate.Request Input { get; set; } = new();

    [BindProperty]
    public LocalDate? SaidDay { get; set; }

    [BindProperty]
    public LocalTime? SaidTime { get; set; }

    public GetEstimate.Answer Found { get; private set; } = null!;

    public WorkshopTime Time { get; private set; } = null!;

    public LocalDateTime Now => Time.At(clock.GetCurrentInstant());

    public bool MayAnswer { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnGetPdf() =>
        (await Read(new EstimatePaper.Request(EstimateId, address.Of), EstimatePaper.Handle)).Then(files.Of).TryGet(out var file, out var problem)
            ? File(file, PdfFiles.ContentType, "estimate.pdf")
            : Refused(problem);

    public async Task<IActionResult> OnPost()
    {
        if (!await May(Policies.Books))
        {
            return Forbid();
        }

        return await Write(
            Input with { Id = EstimateId, SaidAt = SaidMoment.Read(await WorkshopTimes.Read(db, HttpContext.RequestAborted), SaidDay, SaidTime, clock, ModelState) },
            AnswerEstimate.Handle,
            answered =>
            {
                Done = $"The owner's answer is recorded: {answered.Decision.Spoken()}.";
                return Redirect($"/estimates/{EstimateId}");
            },
            again: Show);
    }

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new GetEstimate.Request(EstimateId), GetEstimate.Handle)).TryGet(out var found, out var problem))
        {
            return Refused(problem);
        }

        (Found, Time) = (found, await WorkshopTimes.Read(db, HttpContext.RequestAborted));
        MayAnswer = found.MayBeAnswered && await May(Policies.Books);
        return Page();
    }
}
