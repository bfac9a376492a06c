using System.Globalization;
using System.Text;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Contacts;
using Workshop.Domain.Estimates;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Web.Data;
using Workshop.Web.Features.Contacts;

namespace Workshop.Web.Features.Estimates;

/// <summary>
/// An estimate as a letter or an e-mail to the owner: by a template that names {estimate}, or in plain words where there is none.
/// Nothing is written; a person reads and sends it.
/// </summary>
public static class DraftEstimateMessage
{
    /// <param name="TemplateId">Left out: the first, by name, of a channel to which the owner has agreed.</param>
    public sealed record Request(Guid Id, Guid? TemplateId = null);

    /// <param name="Agreed">Whether the owner has agreed to be reached by the channel.</param>
    /// <param name="Templates">Those that name {estimate}.</param>
    public sealed record Answer(
        Guid EstimateId, Guid MotorcycleId, string Owner, Guid? TemplateId, ContactChannel Channel, bool Agreed, string To, string Subject, string Body,
        IReadOnlyList<DraftMessage.Choice> Templates);

    private static readonly DraftAround.Plain Plain = new(
        "Estimate for {registration}",
        "Dear {owner},\n\nthis is our estimate for your {motorcycle}, {registration}.\n\n{estimate}\n\nPlease tell us whether you agree: call {phone}, or answer this message. Nothing beyond it is done before you have said yes.\n\n{workshop}\n");

    public static async Task<Outcome<Answer>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        if (!(await GetEstimate.Handle(new GetEstimate.Request(request.Id), db, actor, clock, ct)).TryGet(out var estimate, out var problem))
        {
            return problem;
        }

        if (estimate.OwnerId is not { } ownerId)
        {
            return Problem.Impossible("no-owner", "id", $"id is that of an estimate for {estimate.Registration}: no owner is on record.");
        }

        var owner = await db.People.AsNoTracking().SingleAsync(p => p.Id == ownerId, ct);
        var drafted = await DraftAround.Write(
            db, estimate.MotorcycleId, owner, request.TemplateId, TemplateFields.Estimate, Text(estimate), Plain, clock, ct);
        return drafted.TryGet(out var draft, out problem)
            ? new Answer(
                estimate.Id, estimate.MotorcycleId, owner.Name, draft.TemplateId, draft.Channel, draft.Agreed, draft.To, draft.Subject, draft.Body,
                draft.Templates)
            : problem;
    }

    /// <summary>Lines and sums as text.</summary>
    internal static string Text(GetEstimate.Answer estimate)
    {
        var text = new StringBuilder();
        var of = estimate.FindingPlace is { } place ? $", {place}" : "";
        text.AppendLine(CultureInfo.InvariantCulture, $"Estimate {estimate.Version} of job card {estimate.JobCardNumber}{of}, in {estimate.Currency}");
        foreach (var line in estimate.Lines.Where(l => l is { Dropped: false, Charge: EstimateCharge.Always, Option: null }))
        {
            text.AppendLine(Line(line));
        }

        text.AppendLine(CultureInfo.InvariantCulture, $"Net: {Money.Say(estimate.Sums.Net)}");
        foreach (var rate in estimate.Sums.Rates)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"Tax {rate.Percent:0.###} % of {Money.Say(rate.Net)}: {Money.Say(rate.Tax)}");
        }

        text.AppendLine(CultureInfo.InvariantCulture, $"Total with tax: {Money.Say(estimate.Sums.Gross, estimate.Currency)}");
        Section(text, "Charged only if used:", estimate.Lines.Where(l => l is { Dropped: false, Charge: EstimateCharge.IfUsed, Option: null }));
        foreach (var option in estimate.Options)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"If needed, {option.Name}: {Money.Say(option.Sums.Gross, estimate.Currency)} with tax.");
        }

        return estimate.ValidUntil is { } until
            ? text.Append(CultureInfo.InvariantCulture, $"It holds until {until.ToString("d MMMM uuuu", CultureInfo.InvariantCulture)}.").ToString()
            : text.ToString().TrimEnd();
    }

    private static void Section(StringBuilder text, string heading, IEnumerable<LineView> lines)
    {
        var all = lines.ToList();
        if (all.Count > 0)
        {
            text.AppendLine(heading);
            all.ForEach(l => text.AppendLine(Line(l)));
        }
    }

    private static string Line(LineView line) =>
        $"- {line.Text}, {EstimateWords.Quantity(line.Quantity, line.Unit)} at {Money.SayPrice(line.UnitPrice!.Value)} {line.Unit.PerWhat()}: {Money.Say(line.Net!.Value)}";
}
