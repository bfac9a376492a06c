using System.Diagnostics;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;
using Workshop.Domain.Bookings;
using Workshop.Domain.JobCards;
using Workshop.Domain.People;
using Workshop.Tests.Hosting;
using Xunit;
using static Workshop.Web.Tests.Bookings.Counter;

namespace Workshop.Web.Tests.Bookings;

/// <summary>What goes wrong when many want the same, or somebody is killed in the middle. Each test has days of its own.</summary>
public sealed partial class BookingFaultsTests(WorkshopApp app) : IClassFixture<WorkshopApp>
{
    private const int Clients = 64;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Of_64_clients_of_two_copies_of_the_service_one_gets_the_hour_and_the_others_read_what_is_free_next()
    {
        await using var copy = app.Copy();
        var (first, second) = (await app.As(Roles.Advisor), await WorkshopApp.Of(copy, Roles.Advisor));
        var motorcycles = await AddMotorcycles(first, "CROWD");
        var start = Instant.FromUtc(2026, 3, 5, 8, 0);

        var answers = await Task.WhenAll(motorcycles.Select((m, i) => (i % 2 == 0 ? first : second).Book(m, start)));

        var winner = Assert.Single(answers, a => a.StatusCode == HttpStatusCode.Created);
        var number = await winner.Number();
        var offered = new HashSet<Instant>();
        foreach (var loser in answers.Where(a => a != winner))
        {
            Assert.Equal(HttpStatusCode.Conflict, loser.StatusCode);
            var problem = await loser.Json();
            Assert.StartsWith($"Bay 1 is taken by job card {number} (", problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
            Assert.Contains("The next free slot is 2026-03-05 ", problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
            offered.Add(InstantPattern.ExtendedIso.Parse(problem.GetProperty("nextSlot").GetProperty("startsAt").GetString()!).Value);
        }

        // Who else there is to do the work depends on the tests before; all who lost read the same, and nothing that is past.
        Assert.True(Assert.Single(offered) >= start);

        Assert.Equal(1, await app.Look(db => db.JobCards.CountAsync(c => c.StartsAt == start, Ct)));
        Assert.Equal(0, await Overlaps());
    }

    [Fact]
    public async Task A_booking_and_an_absence_of_its_technician_at_the_same_moment_see_each_other()
    {
        var (advisor, manager) = (await app.As(Roles.Advisor), await app.As(Roles.Manager));
        var seen = new HashSet<bool>();
        for (var round = 0; round < 6; round++)
        {
            var technician = await app.AddResource(ResourceKind.Technician, $"AB {round}");
            var motorcycle = await advisor.AddMotorcycle();
            var start = Instant.FromUtc(2026, 4, 6 + round, 7, 0);
            var absence = new { reason = "leave", firstDay = $"2026-04-{6 + round:00}" };

            var booking = advisor.Book(motorcycle, start, TestWorkshop.Bay2, technician);
            var leave = manager.PostAsJsonAsync($"/api/v1/resources/{technician}/absences", absence, Ct);
            await Task.WhenAll(booking, leave);

            var booked = (await booking).StatusCode == HttpStatusCode.Created;
            var standing = (await (await leave).Json()).GetProperty("standing").GetArrayLength();
            // Either the booking was refused, or whoever entered the absence was told of it.
            Assert.Equal(booked, standing > 0);
            seen.Add(booked);
        }

        Assert.NotEmpty(seen);
    }

    [Fact]
    public async Task A_service_that_is_killed_while_it_books_leaves_whole_bookings_or_none_and_holds_nothing()
    {
        var advisor = await app.As(Roles.Advisor);
        var motorcycles = await AddMotorcycles(advisor, "KILL");
        // The process has the clock of the machine.
        var monday = SystemClock.Instance.GetCurrentInstant().InUtc().Date.PlusDays(14).Next(IsoDayOfWeek.Monday);
        var starts = Enumerable.Range(0, Clients).Select(i => Nine(monday.PlusDays((7 * (i / 5)) + (i % 5)))).ToList();
        var acknowledged = new List<int>();
        using (var service = StartService())
        {
            using var client = new HttpClient { BaseAddress = new Uri(await AddressOf(service)) };
            await SignIn(client);
            // A day each; the first answers are waited for, then the service dies in the middle of the rest.
            var bookings = motorcycles.Select((m, i) => Send(client, m, starts[i], i)).ToList();
            for (var i = 0; i < 3; i++)
            {
                var done = await Task.WhenAny(bookings);
                acknowledged.Add(await (await done).Number());
                bookings.Remove(done);
            }

            service.Kill();
            await service.WaitForExitAsync(Ct);
            foreach (var booking in bookings)
            {
                try
                {
                    acknowledged.Add(await (await booking).Number());
                }
                catch (HttpRequestException)
                {
                    // Its answer never came: it may stand whole, or not at all.
                }
            }
        }

        var cards = await app.Look(db => db.JobCards.Where(c => c.StartsAt >= starts[0]).Select(c => c.Number).ToListAsync(Ct));
        Assert.Subset(cards.ToHashSet(), acknowledged.ToHashSet());
        foreach (var number in cards)
        {
            Assert.Equal(4, await app.Look(db => db.PlannedPhases.CountAsync(p => p.JobCardNumber == number, Ct)));
            Assert.Equal(6, await app.Look(db => db.Occupancies.CountAsync(o => o.JobCardNumber == number && o.Live, Ct)));
            Assert.Equal(1, await app.Look(db => db.JobCardItems.CountAsync(i => i.JobCardNumber == number, Ct)));
        }

        // Nothing is left locked: the last day can be booked by another copy.
        var free = await advisor.Book(await advisor.AddMotorcycle(), Instant.FromUtc(2026, 8, 31, 8, 0), TestWorkshop.Bay2);
        Assert.Equal(HttpStatusCode.Created, free.StatusCode);
        Assert.Equal(0, await Overlaps());
    }

    private static Instant Nine(LocalDate day) =>
        (day + new LocalTime(9, 0)).InZoneLeniently(DateTimeZoneProviders.Tzdb["Europe/Vienna"]).ToInstant();

    /// <summary>Counted without the constraint that should make it nothing.</summary>
    private Task<int> Overlaps() => app.Look(db => db.Database.SqlQuery<int>(
        $"""
         select count(*)::int as "Value" from occupancies a join occupancies b
         on a.resource_id = b.resource_id and a.id < b.id and a.live and b.live and a.span && b.span
         """).SingleAsync(Ct));

    private static async Task<IReadOnlyList<Guid>> AddMotorcycles(HttpClient advisor, string plate)
    {
        var added = new List<Guid>();
        for (var i = 0; i < Clients; i++)
        {
            added.Add(await advisor.AddMotorcycle($"{plate} {i}"));
        }

        return added;
    }

    private static async Task<HttpResponseMessage> Send(HttpClient client, Guid motorcycle, Instant startsAt, int key)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/v1/bookings")
        {
            Content = JsonContent.Create(new
            {
                motorcycleId = motorcycle,
                items = new[] { Item(TestEngines.OilService) },
                bayId = TestWorkshop.Bay1,
                technicianId = TestWorkshop.TechnicianResource,
                startsAt = startsAt.ToString("uuuu-MM-dd'T'HH:mm:ss'Z'", null),
            }),
        };
        request.Headers.Add("Idempotency-Key", $"kill-{key}");
        return await client.SendAsync(request, Ct);
    }

    private static async Task SignIn(HttpClient client)
    {
        var answer = await client.PostAsJsonAsync("/api/v1/session", new { userName = Roles.Advisor, password = TestWorkshop.Password }, Ct);
        var token = (await answer.Content.ReadFromJsonAsync<JsonElement>(Ct)).GetProperty("token").GetString();
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
    }

    private Process StartService()
    {
        var start = new ProcessStartInfo(
            "dotnet", [Path.Combine(AppContext.BaseDirectory, "Workshop.Web.dll"), "--urls", "http://127.0.0.1:0", "--Drift:Refits=false"])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        start.Environment["ConnectionStrings__Workshop"] = app.Database.Connections.Service;
        start.Environment["ConnectionStrings__WorkshopDirect"] = app.Database.Connections.Direct;
        return Process.Start(start)!;
    }

    private static async Task<string> AddressOf(Process service)
    {
        while (await service.StandardOutput.ReadLineAsync(Ct) is { } line)
        {
            if (Address().Match(line) is { Success: true } match)
            {
                _ = service.StandardOutput.ReadToEndAsync(CancellationToken.None);
                return match.Value;
            }
        }

        throw new InvalidOperationException(await service.StandardError.ReadToEndAsync(Ct));
    }

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+")]
    private static partial Regex Address();
}
