using FluentValidation;
using NodaTime;
using Workshop.Domain.Bookings;
using Workshop.Domain.Outcomes;
using Workshop.Web.Http;

namespace Workshop.Web.Features.Bookings;

/// <summary>
/// What the owner and the advisor agree on, as it is typed. Times are instants, as programs send them, or else days and times of the
/// workshop's clock, as forms do. A technician or bay that is named is kept to: no other is looked for.
/// </summary>
public sealed record Wishes
{
    public Instant? NotBefore { get; init; }

    /// <summary>From the opening of that day on.</summary>
    public LocalDate? NotBeforeDay { get; init; }

    public Instant? ReadyBy { get; init; }

    public LocalDate? ReadyByDay { get; init; }

    /// <summary>Absent: by the end of the day.</summary>
    public LocalTime? ReadyByTime { get; init; }

    public Guid? TechnicianId { get; init; }

    public Guid? BayId { get; init; }

    /// <summary>A technician runs it and hears the complaint as it arrives.</summary>
    public bool TestRunAtArrival { get; init; }

    /// <summary>Minutes of work in place of what the items add up to.</summary>
    public int? WorkMinutes { get; init; }

    /// <summary>The same as a row of a card, with moments for days.</summary>
    internal Outcome<VisitWishes> Read(WorkshopTime time, int number = 0)
    {
        var notBefore = NotBefore ?? (NotBeforeDay is { } day ? time.WholeDay(day).Start : null);
        Instant? readyBy = ReadyBy;
        if (readyBy is null && ReadyByDay is { } last)
        {
            if (ReadyByTime is not { } at)
            {
                readyBy = time.WholeDay(last).End;
            }
            else if (time.InstantOf("wishes.readyByTime", last, at).TryGet(out var moment, out var problem))
            {
                readyBy = moment;
            }
            else
            {
                return problem;
            }
        }

        return notBefore >= readyBy
            ? Problem.Impossible("wishes-cross", ReadyBy is null ? "wishes.readyByDay" : "wishes.readyBy",
                $"wishes.readyBy is {time.Say(readyBy!.Value)}, not after the day from which on it may come, {time.Say(notBefore!.Value)}; give a later one.")
            : new VisitWishes
            {
                JobCardNumber = number,
                NotBefore = notBefore,
                ReadyBy = readyBy,
                TechnicianId = TechnicianId,
                BayId = BayId,
                TestRunAtArrival = TestRunAtArrival,
                WorkMinutes = WorkMinutes,
            };
    }

    internal sealed class Validator : AbstractValidator<Wishes>
    {
        public Validator()
        {
            RuleFor(w => w.WorkMinutes).IsWhole(1, VisitShape.MostWorkMinutes);
            RuleFor(w => w.NotBeforeDay).Null().When(w => w.NotBefore is not null)
                .WithMessage("{PropertyName} is given beside notBefore: give one or the other.");
            RuleFor(w => w.ReadyByDay).Null().When(w => w.ReadyBy is not null)
                .WithMessage("{PropertyName} is given beside readyBy: give one or the other.");
            RuleFor(w => w.ReadyByDay).IsGiven("the day of readyByTime").When(w => w.ReadyByTime is not null && w.ReadyBy is null);
        }
    }
}
