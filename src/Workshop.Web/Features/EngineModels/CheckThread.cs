using FluentValidation;
using NodaTime;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Measures;
using Workshop.Domain.Outcomes;
using Workshop.Domain.People;
using Workshop.Domain.Threads;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels;

/// <summary>A torque beside what a thread can bear, for a fastener of no specification.</summary>
public static class CheckThread
{
    public sealed record Request
    {
        public string? Thread { get; init; }

        /// <summary>By ISO 898-1: "8.8".</summary>
        public string? PropertyClass { get; init; }

        public string? Form { get; init; }

        /// <summary>Oiled, locked, or dry where nothing is said.</summary>
        public string? Treatment { get; init; }

        public string? Into { get; init; }

        public decimal? EngagementMm { get; init; }

        public decimal? ShearStrengthMpa { get; init; }

        public decimal? TorqueNm { get; init; }
    }

    public sealed class Validator : AbstractValidator<Request>
    {
        public Validator()
        {
            RuleFor(r => r.Thread).IsGiven("diameter and pitch, such as M6x1");
            RuleFor(r => r.Thread).Must(t => string.IsNullOrEmpty(t) || MetricThread.TryParse(t, out _))
                .WithMessage((_, t) => $"{{PropertyName}} is \"{t}\": diameter and pitch by ISO 261 are wanted, for example M6x1.");
            RuleFor(r => r.PropertyClass).Must(c => string.IsNullOrEmpty(c) || Domain.Threads.PropertyClass.TryFind(c, out _))
                .WithMessage((_, c) => $"{{PropertyName}} is \"{c}\": one of {Domain.Threads.PropertyClass.Names} is allowed, or none where it is not known.");
            RuleFor(r => r.Form).IsWordOf<Request, FastenerForm>();
            RuleFor(r => r.Treatment).IsWordOf<Request, ThreadTreatment>();
            RuleFor(r => r.Into).IsWordOf<Request, ThreadMaterial>();
            RuleFor(r => r.EngagementMm).IsWithin(0.1m, 100, 2, "mm");
            RuleFor(r => r.ShearStrengthMpa).IsWithin(10, 1000, 1, "MPa");
            RuleFor(r => r.TorqueNm).IsGiven("the torque to be compared").IsWithin(Torque.SmallestNm, Torque.LargestNm, Torque.DecimalsNm, "N.m");
        }
    }

    public static Task<Outcome<TorqueView>> Handle(
        Request request, WorkshopDbContext db, Actor actor, IClock clock, CancellationToken ct)
    {
        var fastener = new Fastener(
            "typed", "Typed", 1, request.Thread!, Torque.FromNewtonMetres(request.TorqueNm!.Value),
            Words.Read<ThreadTreatment>(request.Treatment) ?? ThreadTreatment.Dry, "", new Provenance("", ""))
        {
            PropertyClass = string.IsNullOrEmpty(request.PropertyClass) ? null : request.PropertyClass,
            Form = Words.Read<FastenerForm>(request.Form),
            Into = Words.Read<ThreadMaterial>(request.Into) is { } material
                ? new ReceivingThread(material, request.EngagementMm, request.ShearStrengthMpa)
                : null,
        };
        return Task.FromResult<Outcome<TorqueView>>(TorqueView.Of(TorquePlausibility.Of(fastener)));
    }
}
