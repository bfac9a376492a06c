using System.Globalization;
using Microsoft.AspNetCore.Mvc.ModelBinding;

namespace Workshop.Web.Features.Tooling;

/// <summary>The fields of an adapter on a form, new or changed, as they were typed.</summary>
public sealed record AdapterForm(IAdapterFields Typed, ModelStateDictionary State)
{
    /// <summary>What a field shows: what was typed, even where it is no number, else the value.</summary>
    public string Text(string field, decimal? value) =>
        State.TryGetValue($"Input.{field}", out var entry) && entry.AttemptedValue is { } typed
            ? typed
            : value?.ToString("0.#", CultureInfo.InvariantCulture) ?? "";
}
