using FluentValidation;

namespace Workshop.Web.Http;

/// <summary>How pages and routes are put together.</summary>
internal static class HttpRegistration
{
    public static void AddUseCases(this IServiceCollection services)
    {
        Rules.NameFieldsAsTyped();
        services.AddHttpContextAccessor();
        services.AddValidatorsFromAssemblyContaining<Api>(ServiceLifetime.Singleton, includeInternalTypes: true);
        services.AddScoped(provider => Caller.Of(provider.GetRequiredService<IHttpContextAccessor>().HttpContext!));
        services.AddScoped<UseCases>();
        services.AddScoped<Api>();
        services.AddScoped<Features.SignIn.OpenSession>();
        services.AddScoped<Features.SignIn.ChangePassword>();
        services.AddScoped<WorkshopName>();
        services.ConfigureHttpJsonOptions(o => WorkshopJson.Apply(o.SerializerOptions));
        services.Configure<RouteHandlerOptions>(o => o.ThrowOnBadRequest = true);
        services.AddProblemDetails();
    }

    public static void AddPages(this IServiceCollection services)
    {
        services.AddRazorPages(o =>
        {
            o.RootDirectory = "/Features";
            PagePolicies.Apply(o.Conventions);
        }).AddMvcOptions(o =>
        {
            o.ModelBinderProviders.Insert(0, new DecimalBinderProvider());
            o.ModelBinderProviders.Insert(0, new LocalTimeBinderProvider());
            o.SuppressImplicitRequiredAttributeForNonNullableReferenceTypes = true;
            o.ModelMetadataDetailsProviders.Add(new AllowedMessages());
        }).AddViewOptions(o => o.HtmlHelperOptions.ClientValidationEnabled = false);
        services.AddAntiforgery(o =>
        {
            o.Cookie.Name = "workshop-form";
            o.Cookie.SameSite = SameSiteMode.Strict;
        });
    }

    /// <summary>An address or a method that the API lacks is answered with problem details, too.</summary>
    public static void UseApiProblems(this IApplicationBuilder app) => app.UseWhen(
        http => SessionAuthentication.IsApi(http.Request),
        api => api.UseStatusCodePages(context => ApiFaults.SayStatus(context.HttpContext)));

    /// <summary>A refusal or a fault met by a page ends in a page that says what, with the request's id.</summary>
    public static void UsePageProblems(this IApplicationBuilder app) => app.UseWhen(
        http => !SessionAuthentication.IsApi(http.Request) && !http.Request.Path.StartsWithSegments("/health"),
        pages => pages.UseStatusCodePagesWithReExecute("/error", "?status={0}"));
}
