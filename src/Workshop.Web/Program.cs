using FluentValidation;
using Microsoft.AspNetCore.Identity;
using NodaTime;
using Serilog;
using Workshop.Web.Data;
using Workshop.Web.Data.Seeding;
using Workshop.Web.Features.Arrivals;
using Workshop.Web.Features.Bays;
using Workshop.Web.Features.Bookings;
using Workshop.Web.Features.Calendars;
using Workshop.Web.Features.CamTiming;
using Workshop.Web.Features.Clearances;
using Workshop.Web.Features.Comebacks;
using Workshop.Web.Features.Compression;
using Workshop.Web.Features.Consumables;
using Workshop.Web.Features.Contacts;
using Workshop.Web.Features.Diary;
using Workshop.Web.Features.Drift;
using Workshop.Web.Features.EngineModels;
using Workshop.Web.Features.Estimates;
using Workshop.Web.Features.Findings;
using Workshop.Web.Features.Finishing;
using Workshop.Web.Features.Gauges;
using Workshop.Web.Features.Ignition;
using Workshop.Web.Features.Imports;
using Workshop.Web.Features.Intervals;
using Workshop.Web.Features.JobCards;
using Workshop.Web.Features.Kits;
using Workshop.Web.Features.Motorcycles;
using Workshop.Web.Features.Orders;
using Workshop.Web.Features.Paper;
using Workshop.Web.Features.People;
using Workshop.Web.Features.Photos;
using Workshop.Web.Features.Records;
using Workshop.Web.Features.Replan;
using Workshop.Web.Features.Resources;
using Workshop.Web.Features.Shims;
using Workshop.Web.Features.SignIn;
using Workshop.Web.Features.Stores;
using Workshop.Web.Features.Tooling;
using Workshop.Web.Features.TorqueSheets;
using Workshop.Web.Features.Utilisation;
using Workshop.Web.Hosting;
using Workshop.Web.Http;

var builder = WebApplication.CreateBuilder(args);
builder.Services.AddSerilog(StructuredLogs.Configure(builder.Configuration));
builder.WebHost.ConfigureKestrel(StructuredLogs.Limit);

WorkshopDatabase database;
try
{
    database = await DatabaseLocator.OpenAsync(builder.Configuration, StructuredLogs.AtStart(), CancellationToken.None);
}
catch (DatabaseUnavailableException unavailable)
{
    await Console.Error.WriteLineAsync(unavailable.Message);
    return 1;
}

await using var lastOfAll = database;
builder.Services.AddWorkshopData(database.Connections);
builder.Services.AddSingleton<IClock>(SystemClock.Instance);
builder.Services.AddSessions();
builder.Services.AddAuthorization(Policies.Add);
builder.Services.AddIdentityCore<Account>(SignInRules.Configure)
    .AddRoles<IdentityRole<Guid>>()
    .AddEntityFrameworkStores<WorkshopDbContext>();
builder.Services.AddRateLimits(builder.Configuration);
builder.Services.AddUseCases();
builder.Services.AddDriftWorker(builder.Configuration);
builder.Services.AddOutbox(builder.Configuration);
builder.Services.AddFloorNews();
builder.Services.AddDueWorker(builder.Configuration);
builder.Services.AddWaitKeeper();
builder.Services.AddLedgerWatch();
builder.Services.AddPaper();
builder.Services.AddPages();
builder.Services.AddApiDocument();
builder.Services.AddHealthChecks().AddDbContextCheck();

var app = builder.Build();
await DatabaseRegistration.Migrate(database.Connections.Direct, app.Lifetime.ApplicationStopping);
await FirstStart.Fill(app);

app.UseSerilogRequestLogging(StructuredLogs.Describe);
app.UseSecurityHeaders();
app.UseExceptionHandler("/error");
app.UseApiFaults();
app.UseApiProblems();
app.UsePageProblems();
app.UseAssets();
app.UseApiDocument();
app.UseRouting();
app.UseApiForgeryGuard();
app.UseAuthentication();
app.UseRateLimiter();
app.UseAuthorization();

app.MapHealth();
app.MapRazorPages();
LiveFloor.Map(app);
BayWorker.Map(app);
app.MapCalendarLinks();
app.MapPhotos();
app.MapLinkedPhotos();
app.MapGet("/", () => TypedResults.LocalRedirect("/due")).RequireAuthorization(Policies.Reads).ExcludeFromDescription();
var api = app.MapGroup("/api/v1").RequireAuthorization(Policies.Reads);
SignInApi.Map(api);
DueApi.Map(api);
EngineModelsApi.Map(api);
MotorcyclesApi.Map(api);
DriftApi.Map(api);
ImportsApi.Map(api);
BookingsApi.Map(api);
CalendarsApi.Map(api);
ReplanApi.Map(api);
DiaryApi.Map(api);
PeopleApi.Map(api);
ResourcesApi.Map(api);
UtilisationApi.Map(api);
JobCardsApi.Map(api);
ProgressApi.Map(api);
ArrivalsApi.Map(api);
BaysApi.Map(api);
StoresApi.Map(api);
ConsumablesApi.Map(api);
OrdersApi.Map(api);
ToolingApi.Map(api);
GaugesApi.Map(api);
ContactsApi.Map(api);
CautionsApi.Map(api);
KitsApi.Map(api);
EstimatesApi.Map(api);
FindingsApi.Map(api);
PhotosApi.Map(api);
TorqueSheetsApi.Map(api);
PaperApi.Map(api);
ClearancesApi.Map(api);
CamTimingApi.Map(api);
FinishingApi.Map(api);
ComebacksApi.Map(api);
CompressionApi.Map(api);
PlugsApi.Map(api);
ShimsApi.Map(api);
SignOffApi.Map(api);
RecordsApi.Map(api);

await app.RunAsync();
return 0;
