using System.Globalization;
using Microsoft.AspNetCore.Mvc.ModelBinding;

namespace Workshop.Web.Http;

/// <summary>
/// Reads a number typed into a form: 0.15 and 0,15 alike. Group separators are refused, because the framework's own binder
/// would read 0,15 as 15 and 0,002 as 2.
/// </summary>
internal sealed class DecimalBinder : IModelBinder
{
    private const NumberStyles Plain = NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign
        | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite;

    public Task BindModelAsync(ModelBindingContext bindingContext)
    {
        ArgumentNullException.ThrowIfNull(bindingContext);
        var typed = bindingContext.ValueProvider.GetValue(bindingContext.ModelName);
        if (typed == ValueProviderResult.None)
        {
            return Task.CompletedTask;
        }

        bindingContext.ModelState.SetModelValue(bindingContext.ModelName, typed);
        var text = typed.FirstValue;
        if (string.IsNullOrWhiteSpace(text))
        {
            bindingContext.Result = ModelBindingResult.Success(null);
        }
        else if (TryRead(text, out var number))
        {
            bindingContext.Result = ModelBindingResult.Success(number);
        }
        else
        {
            bindingContext.ModelState.TryAddModelError(bindingContext.ModelName,
                Allowed.Sentence(FieldNames.Camel(bindingContext.FieldName), text, typeof(decimal)));
        }

        return Task.CompletedTask;
    }

    public static bool TryRead(string text, out decimal number)
    {
        number = 0;
        return !(text.Contains(',') && text.Contains('.'))
            && decimal.TryParse(text.Replace(',', '.'), Plain, CultureInfo.InvariantCulture, out number);
    }
}

internal sealed class DecimalBinderProvider : IModelBinderProvider
{
    public IModelBinder? GetBinder(ModelBinderProviderContext context) =>
        context.Metadata.UnderlyingOrModelType == typeof(decimal) ? new DecimalBinder() : null;
}
