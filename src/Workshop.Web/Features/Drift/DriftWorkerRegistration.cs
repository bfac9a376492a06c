namespace Workshop.Web.Features.Drift;

internal static class DriftWorkerRegistration
{
    public static void AddDriftWorker(this IServiceCollection services, IConfiguration configuration)
    {
        services.AddSingleton(configuration.GetSection(DriftWorkerOptions.Section).Get<DriftWorkerOptions>() ?? new DriftWorkerOptions());
        services.AddSingleton<DriftWorker>();
        services.AddHostedService(provider => provider.GetRequiredService<DriftWorker>());
    }
}
