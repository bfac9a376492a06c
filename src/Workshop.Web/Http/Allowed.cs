using System.Text.Json;
using Microsoft.AspNetCore.Mvc.ModelBinding.Metadata;
using NodaTime;
using Workshop.Domain.EngineModels;

namespace Workshop.Web.Http;

/// <summary>What may stand in a field of a type, in words: said alike where a form, an address or a body cannot be read.</summary>
internal static class Allowed
{
    public const string Number = "a number such as 0.15 or 0,15, without a sign between thousands,";
    public const string Time = "a time of day such as 09:30";
    public const string Day = "a day such as 2026-03-02";

    /// <summary>Goes before "is allowed"; of a number the comma is a page's, JSON has the point alone.</summary>
    public static string Of(Type type, bool inJson = false)
    {
        var plain = Nullable.GetUnderlyingType(type) ?? type;
        return plain == typeof(int) || plain == typeof(long) || plain == typeof(short) || plain == typeof(uint) ? "a whole number"
            : plain == typeof(decimal) || plain == typeof(double) ? inJson ? "a number such as 0.15" : Number
            : plain == typeof(LocalDate) ? Day
            : plain == typeof(LocalTime) ? Time
            : plain == typeof(Instant) ? "a moment such as 2026-03-02T08:30:00Z"
            : plain == typeof(bool) ? "true or false"
            : plain == typeof(Guid) ? "an id such as 018f3c2e-7b1a-7c3d-9e4f-5a6b7c8d9e0f, as the lists give it,"
            : plain == typeof(ValveKey) ? ValveKey.Form
            : plain == typeof(string) ? "a text"
            : plain.IsEnum ? $"one of {string.Join(", ", Enum.GetNames(plain).Select(JsonNamingPolicy.CamelCase.ConvertName))}"
            : IsMany(plain) ? "a list" : "an object of fields as the API document describes it,";
    }

    public static string Sentence(string field, string? value, Type type) => $"{field} is \"{value}\": {Of(type)} is allowed.";

    private static bool IsMany(Type type) => type.IsArray || typeof(System.Collections.IEnumerable).IsAssignableFrom(type);
}

/// <summary>What pages say of a value that the framework cannot read, by the type of its field.</summary>
internal sealed class AllowedMessages : IBindingMetadataProvider
{
    public void CreateBindingMetadata(BindingMetadataProviderContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var type = context.Key.ModelType;
        var messages = context.BindingMetadata.ModelBindingMessageProvider!;
        messages.SetAttemptedValueIsInvalidAccessor((value, name) => Allowed.Sentence(FieldNames.Camel(name), value, type));
        messages.SetNonPropertyAttemptedValueIsInvalidAccessor(value => $"It is \"{value}\": {Allowed.Of(type)} is allowed.");
        messages.SetValueMustBeANumberAccessor(name => $"{FieldNames.Camel(name)} is no number: {Allowed.Of(type)} is allowed.");
        messages.SetValueMustNotBeNullAccessor(_ => $"It is empty: {Allowed.Of(type)} is allowed.");
    }
}
