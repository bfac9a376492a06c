using Microsoft.AspNetCore.Mvc;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Stores;
using Workshop.Domain.TorqueSheets;
using Workshop.Web.Data;
using Workshop.Web.Http;

namespace Workshop.Web.Features.EngineModels;

public sealed class SpecificationModel(WorkshopDbContext db) : WorkshopPage
{
    [BindProperty(SupportsGet = true)]
    public Guid Id { get; set; }

    [BindProperty(SupportsGet = true)]
    public int? Version { get; set; }

    public GetEngineModel.Answer Answer { get; private set; } = null!;

    /// <summary>What the stores know of the parts that the specification names by code.</summary>
    public IReadOnlyDictionary<string, Part> Parts { get; private set; } = new Dictionary<string, Part>();

    public EngineSpecification Specification => Answer.Specification;

    public bool MayManage { get; private set; }

    public Task<IActionResult> OnGet() => Show();

    public async Task<IActionResult> OnPostSecondPerson(string? fastener, bool asked) => await May(Policies.Manages)
        ? await Write(
            new SetSecondPerson.Request(Id, fastener ?? "", asked),
            SetSecondPerson.Handle,
            set =>
            {
                Done = set.Asked ? "A second person is asked for there from now on." : "No second person is asked for there any more.";
                return Redirect($"/engine-models/{Id}#second-person");
            },
            again: Show,
            prefix: "")
        : Forbid();

    public Task<IActionResult> OnPostAsLeft(bool asked) => SetAsLeft(Id, asked);

    public Task<IActionResult> OnPostAsLeftOfAll(bool asked) => SetAsLeft(null, asked);

    private async Task<IActionResult> SetAsLeft(Guid? engineModel, bool asked) => await May(Policies.Manages)
        ? await Write(
            new SetAsLeftSecondPerson.Request(engineModel, asked),
            SetAsLeftSecondPerson.Handle,
            set =>
            {
                Done = set.Asked ? "A second person is asked for the readings as left from now on." : "That second person is not asked for any more.";
                return Redirect($"/engine-models/{Id}#as-left-second-person");
            },
            again: Show,
            prefix: "")
        : Forbid();

    private async Task<IActionResult> Show()
    {
        if (!(await Read(new GetEngineModel.Request(Id, Version), GetEngineModel.Handle)).TryGet(out var answer, out var problem))
        {
            return Refused(problem);
        }

        Answer = answer;
        MayManage = await May(Policies.Manages);
        Parts = await NamedParts.Read(db, answer.Specification, HttpContext.RequestAborted);
        return Page();
    }

    public string NameOf(string partCode) => Parts.TryGetValue(partCode, out var part) ? part.Name : partCode;

    /// <summary>"2 × O-ring 24.99 x 3.53", "3600 ml Engine oil 10W-40".</summary>
    public string Quantity(decimal quantity, string partCode) =>
        Parts.GetValueOrDefault(partCode)?.Unit == PartUnit.Millilitre
            ? $"{quantity:0.####} ml {NameOf(partCode)}"
            : $"{quantity:0.####} × {NameOf(partCode)}";

    public string Named(Seal seal) => $"{Quantity(seal.Quantity, seal.PartCode)}, {seal.Policy.Spoken()}";

    /// <summary>Everything that an item opens by itself, in words.</summary>
    public IEnumerable<string> Opened(ServiceItem item) =>
    [
        .. Specification.Accesses.Where(a => item.Accesses.Contains(a.Code)).Select(a => a.Name),
        .. Specification.Joints.Where(j => item.Joints.Contains(j.Code)).Select(j => j.Name),
        .. Specification.Fasteners.Where(f => item.Fasteners.Contains(f.Code)).Select(f => f.Name),
    ];
}
