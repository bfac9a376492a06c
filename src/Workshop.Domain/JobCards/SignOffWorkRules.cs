using Workshop.Domain.Kits;
using Workshop.Domain.TorqueSheets;

namespace Workshop.Domain.JobCards;

/// <summary>The motorcycle is checked in, and the card neither signed off nor cancelled.</summary>
public sealed class CardIsOpen : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return facts.State switch
        {
            JobCardState.CheckedIn => [],
            JobCardState.Booked =>
                [new("card", $"Job card {facts.Number} is booked, but the motorcycle is not checked in.", SignOffPlace.CheckIn)],
            JobCardState.SignedOff =>
                [new("card", $"Job card {facts.Number} is signed off already; a card is signed once.", SignOffPlace.Card)],
            JobCardState.Cancelled => [new("card", $"Job card {facts.Number} is cancelled.", SignOffPlace.Card)],
            _ => throw new InvalidOperationException($"No rule for a card that is {facts.State}."),
        };
    }
}

/// <summary>Every fastener that was opened has a tick that stands.</summary>
public sealed class OpenedFastenersAreTicked : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return [.. facts.ToBeTight.Where(l => !l.IsTightened).Select(l => new SignOffReason(
            $"fasteners.{l.Fastener.Code}",
            $"{l.Fastener.Name}{(l.Fastener.Count > 1 ? $" ({l.Fastener.Count})" : "")}: {Words(l.Tick.State)}.",
            SignOffPlace.TorqueSheet))];
    }

    private static string Words(TickState state) => state switch
    {
        TickState.NotTightened => "opened, but not ticked on the torque sheet",
        TickState.TakenBack => "its tick was taken back",
        TickState.OpenedAgain => "opened again since it was ticked",
        _ => throw new InvalidOperationException($"A fastener that is {state} stands in nobody's way."),
    };
}

/// <summary>Every seal that is reused only after an inspection has one, if what it seals was opened.</summary>
public sealed class OpenedSealsAreInspected : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var inspected = OpenedSeals.Standing(facts.SealInspections).Select(i => (i.PlaceCode, i.PartCode)).ToHashSet();
        return [.. facts.SealsOpened
            .Where(s => s.MustBeInspected && !inspected.Contains((s.PlaceCode, s.PartCode)))
            .Select(s => new SignOffReason(
                $"seals.{s.PlaceCode}.{s.PartCode}",
                $"{s.Place}: {facts.Parts.GetValueOrDefault(s.PartCode)?.Name ?? s.PartCode} is reused only after an inspection, and nobody has recorded one.",
                SignOffPlace.Seals))];
    }
}

/// <summary>Where the workshop asks for a second person, one has confirmed the tick.</summary>
public sealed class MarkedFastenersHaveASecondPerson : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return [.. facts.ToBeTight.Where(l => SecondPerson.IsMissing(l, facts.AskSecondPerson, facts.WitnessedTicks)).Select(l => new SignOffReason(
            $"fasteners.{l.Fastener.Code}",
            $"{l.Fastener.Name}: ticked, but no second person has confirmed it, which the workshop asks for here.",
            SignOffPlace.TorqueSheet))];
    }
}

/// <summary>Every caution of the items that were begun was read.</summary>
public sealed class CautionsAreAcknowledged : ISignOffRule
{
    public IReadOnlyList<SignOffReason> Against(SignOffFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return [.. Cautions.InOrder(facts.Begun.SelectMany(i => i.Cautions))
            .Where(c => !facts.Acknowledged.Contains(c.Code))
            .Select(c => new SignOffReason(
                $"cautions.{c.Code}", $"The caution \"{c.Title}\" is not acknowledged.", SignOffPlace.Cautions))];
    }
}
