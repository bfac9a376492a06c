using Microsoft.AspNetCore.Mvc.ModelBinding;
using NodaTime;
using NodaTime.Text;

namespace Workshop.Web.Http;

/// <summary>Reads a time of day as browsers send it: 09:30, and with seconds where a field has them.</summary>
internal sealed class LocalTimeBinder : IModelBinder
{
    private static readonly LocalTimePattern[] Patterns =
        [LocalTimePattern.CreateWithInvariantCulture("HH:mm"), LocalTimePattern.ExtendedIso];

    public Task BindModelAsync(ModelBindingContext bindingContext)
    {
        ArgumentNullException.ThrowIfNull(bindingContext);
        var typed = bindingContext.ValueProvider.GetValue(bindingContext.ModelName);
        if (typed == ValueProviderResult.None)
        {
            return Task.CompletedTask;
        }

        bindingContext.ModelState.SetModelValue(bindingContext.ModelName, typed);
        var text = typed.FirstValue?.Trim();
        if (string.IsNullOrEmpty(text))
        {
            bindingContext.Result = ModelBindingResult.Success(null);
        }
        else if (TryRead(text, out var time))
        {
            bindingContext.Result = ModelBindingResult.Success(time);
        }
        else
        {
            bindingContext.ModelState.TryAddModelError(bindingContext.ModelName,
                Allowed.Sentence(FieldNames.Camel(bindingContext.FieldName), text, typeof(LocalTime)));
        }

        return Task.CompletedTask;
    }

    public static bool TryRead(string text, out LocalTime time)
    {
        foreach (var pattern in Patterns)
        {
            if (pattern.Parse(text).TryGetValue(default, out time))
            {
                return true;
            }
        }

        time = default;
        return false;
    }
}

internal sealed class LocalTimeBinderProvider : IModelBinderProvider
{
    public IModelBinder? GetBinder(ModelBinderProviderContext context) =>
        context.Metadata.UnderlyingOrModelType == typeof(LocalTime) ? new LocalTimeBinder() : null;
}
