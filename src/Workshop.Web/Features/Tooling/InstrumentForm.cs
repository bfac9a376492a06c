using System.Globalization;
using Microsoft.AspNetCore.Mvc.ModelBinding;
using Workshop.Domain.Tooling;

namespace Workshop.Web.Features.Tooling;

/// <summary>The fields of an instrument on a form, new or changed, as they were typed.</summary>
public sealed record InstrumentForm(InstrumentKind Kind, string Unit, IInstrumentFields Typed, ModelStateDictionary State)
{
    public bool IsWrench => Kind == InstrumentKind.TorqueWrench;

    /// <summary>What a field shows: what was typed, even where it is no number, else the value.</summary>
    public string Text(string field, IFormattable? value) =>
        State.TryGetValue($"Input.{field}", out var entry) && entry.AttemptedValue is { } typed
            ? typed
            : value?.ToString("0.####", CultureInfo.InvariantCulture) ?? "";
}
