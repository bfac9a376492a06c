using FluentValidation;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Statistics.Gauges;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Gauges;

/// <summary>Studies, the newest first.</summary>
public static class ListGaugeTrials
{
    public sealed record Request(string? After = null, int? Take = null);

    public sealed record Row(Guid Id, string Name, GaugeDesign Design, string? Instrument, Instant StartedAt, Instant? GivenUpAt, int Wanted, int Read);

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Take).IsPageSize();
            RuleFor(r => r.After).Must(after => after is null || Guid.TryParse(after, out _))
                .WithMessage("{PropertyName} is \"{PropertyValue}\": send back what the page before gave as next.");
        }
    }

    public static async Task<Outcome<Slice<Row>>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        // Ids grow with time.
        var after = request.After is { } text ? Guid.Parse(text) : (Guid?)null;
        return await (
            from trial in db.GaugeTrials.AsNoTracking()
            where after == null || trial.Id < after
            join instrument in db.Instruments on trial.InstrumentId equals instrument.Id into used
            from with in used.DefaultIfEmpty()
            orderby trial.Id descending
            select new Row(
                trial.Id, trial.Name, trial.Design, with == null ? null : with.Name + " (" + with.SerialNumber + ")", trial.StartedAt, trial.GivenUpAt,
                trial.Parts * trial.Trials * db.GaugeTrialAppraisers.Count(a => a.TrialId == trial.Id),
                db.GaugeTrialReadings.Count(r => r.TrialId == trial.Id && r.SupersedesId == null)))
            .ToSlice(request.Take, r => r.Id.ToString(), ct);
    }
}
