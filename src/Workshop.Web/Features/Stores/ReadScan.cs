using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Stores;
using Workshop.Web.Data;
using Workshop.Web.Features.Paper;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Stores;

/// <summary>One more scan into a line of goods in; nothing is written before the line is ready.</summary>
public static class ReadScan
{
    private const int Longest = 80;

    public sealed record Request(ScanLine Line, string? Scan);

    /// <param name="Next">What is asked for after it.</param>
    public sealed record Answer(ScanLine Line, ScanStep Next);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator() => RuleFor(r => r.Scan).IsAtMost(Longest);
    }

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var text = PaperAddress.CodeIn(request.Scan ?? "");
        var part = await PartOf(db, request.Line, ct);
        var read = request.Line.Read(text, text.Length == 0 ? new ScannedThing.Unknown() : await ReadCode.Of(db, text, ct), part?.ShelfLifeMonths);
        if (!read.TryGet(out var line, out var problem))
        {
            return problem;
        }

        return new Answer(line, line.Next((await PartOf(db, line, ct))?.ShelfLifeMonths));
    }

    internal static async Task<Part?> PartOf(WorkshopDbContext db, ScanLine line, CancellationToken ct) =>
        line.PartCode is { } code ? await db.Parts.AsNoTracking().SingleOrDefaultAsync(p => p.Code == code, ct) : null;
}
