using FluentValidation;
using Workshop.Domain.Contacts;

namespace Workshop.Web.Features.Contacts;

/// <summary>What may be typed into a message or a template.</summary>
internal static class MessageTextRules
{
    public static IRuleBuilderOptions<T, string?> IsOneLine<T>(this IRuleBuilder<T, string?> rule) =>
        rule.Must(text => text is null || MessageRules.IsOneLine(text))
            .WithMessage((_, text) => $"{{PropertyName}} is \"{MessageRules.OneLine(text!)}\", with a line break or another control character in it: one line is allowed.");

    public static IRuleBuilderOptions<T, string?> IsPlainText<T>(this IRuleBuilder<T, string?> rule) =>
        rule.Must(text => text is null || MessageRules.IsPlain(text))
            .WithMessage("{PropertyName} has a control character in it: text with line breaks is allowed.");
}
