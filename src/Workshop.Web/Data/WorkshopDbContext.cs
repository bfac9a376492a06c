using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Workshop.Domain.Arrivals;
using Workshop.Domain.Bookings;
using Workshop.Domain.CamTiming;
using Workshop.Domain.Clearances;
using Workshop.Domain.Compression;
using Workshop.Domain.Contacts;
using Workshop.Domain.Drift;
using Workshop.Domain.EngineModels;
using Workshop.Domain.Estimates;
using Workshop.Domain.Finishing;
using Workshop.Domain.Intervals;
using Workshop.Domain.JobCards;
using Workshop.Domain.Kits;
using Workshop.Domain.Motorcycles;
using Workshop.Domain.Orders;
using Workshop.Domain.People;
using Workshop.Domain.Ignition;
using Workshop.Domain.Records;
using Workshop.Domain.Shims;
using Workshop.Domain.Stores;
using Workshop.Domain.Tooling;
using Workshop.Domain.TorqueSheets;
using Workshop.Web.Http;

namespace Workshop.Web.Data;

/// <summary>The sets, and nothing else; how a row is stored stands in the mapping of its feature beside this file.</summary>
public sealed class WorkshopDbContext(DbContextOptions<WorkshopDbContext> options)
    : IdentityDbContext<Account, IdentityRole<Guid>, Guid>(options), IDataProtectionKeyContext
{
    public DbSet<WorkshopProfile> WorkshopProfiles => Set<WorkshopProfile>();
    public DbSet<OpeningHours> OpeningHours => Set<OpeningHours>();
    public DbSet<Holiday> Holidays => Set<Holiday>();

    public DbSet<Person> People => Set<Person>();
    public DbSet<Remark> Remarks => Set<Remark>();
    public DbSet<Session> Sessions => Set<Session>();

    public DbSet<EngineModel> EngineModels => Set<EngineModel>();
    public DbSet<EngineModelVersion> EngineModelVersions => Set<EngineModelVersion>();
    public DbSet<SpecificationDraft> SpecificationDrafts => Set<SpecificationDraft>();

    public DbSet<Motorcycle> Motorcycles => Set<Motorcycle>();
    public DbSet<Engine> Engines => Set<Engine>();
    public DbSet<EngineFitting> EngineFittings => Set<EngineFitting>();
    public DbSet<Odometer> Odometers => Set<Odometer>();
    public DbSet<OdometerReading> OdometerReadings => Set<OdometerReading>();

    public DbSet<DoneItem> DoneItems => Set<DoneItem>();
    public DbSet<GoodsInImport> GoodsInImports => Set<GoodsInImport>();

    public DbSet<HistoryImport> HistoryImports => Set<HistoryImport>();
    public DbSet<DueItem> DueItems => Set<DueItem>();
    public DbSet<DueVisit> DueVisits => Set<DueVisit>();
    public DbSet<PutOff> PutOffs => Set<PutOff>();
    public DbSet<FleetRidingVersion> FleetRidings => Set<FleetRidingVersion>();
    public DbSet<DueRecompute> DueRecomputes => Set<DueRecompute>();

    public DbSet<Resource> Resources => Set<Resource>();
    public DbSet<WorkingHours> WorkingHours => Set<WorkingHours>();
    public DbSet<WorkBreak> WorkBreaks => Set<WorkBreak>();
    public DbSet<Absence> Absences => Set<Absence>();
    public DbSet<Occupancy> Occupancies => Set<Occupancy>();
    public DbSet<PlannedPhase> PlannedPhases => Set<PlannedPhase>();
    public DbSet<VisitWishes> VisitWishes => Set<VisitWishes>();
    public DbSet<CalendarFeed> CalendarFeeds => Set<CalendarFeed>();

    public DbSet<JobCard> JobCards => Set<JobCard>();
    public DbSet<JobCardItem> JobCardItems => Set<JobCardItem>();
    public DbSet<CheckIn> CheckIns => Set<CheckIn>();
    public DbSet<Cancellation> Cancellations => Set<Cancellation>();
    public DbSet<PhaseStart> PhaseStarts => Set<PhaseStart>();
    public DbSet<EngineStop> EngineStops => Set<EngineStop>();
    public DbSet<MotorcycleMove> MotorcycleMoves => Set<MotorcycleMove>();
    public DbSet<VisitWait> VisitWaits => Set<VisitWait>();
    public DbSet<CautionAcknowledgement> CautionAcknowledgements => Set<CautionAcknowledgement>();
    public DbSet<SignOff> SignOffs => Set<SignOff>();
    public DbSet<FastenerTick> FastenerTicks => Set<FastenerTick>();
    public DbSet<TickWitness> TickWitnesses => Set<TickWitness>();
    public DbSet<SecondPersonMark> SecondPersonMarks => Set<SecondPersonMark>();

    public DbSet<ClearanceReading> ClearanceReadings => Set<ClearanceReading>();
    public DbSet<ValveEvent> ValveEvents => Set<ValveEvent>();
    public DbSet<PartChange> PartChanges => Set<PartChange>();
    public DbSet<ReadingImport> ReadingImports => Set<ReadingImport>();
    public DbSet<ShimObservation> ShimObservations => Set<ShimObservation>();
    public DbSet<ShimPlanChoice> ShimPlanChoices => Set<ShimPlanChoice>();
    public DbSet<HandTurn> HandTurns => Set<HandTurn>();

    public DbSet<PositionConfirmation> PositionConfirmations => Set<PositionConfirmation>();

    public DbSet<WorkSpell> WorkSpells => Set<WorkSpell>();
    public DbSet<ClearanceForecast> ClearanceForecasts => Set<ClearanceForecast>();
    public DbSet<EngineOutlook> EngineOutlooks => Set<EngineOutlook>();
    public DbSet<DriftFitVersion> DriftFits => Set<DriftFitVersion>();
    public DbSet<DriftPoolVersion> DriftPools => Set<DriftPoolVersion>();
    public DbSet<DriftRefit> DriftRefits => Set<DriftRefit>();
    public DbSet<LeftOutVisit> LeftOutVisits => Set<LeftOutVisit>();

    public DbSet<CamTimingCheck> CamTimingChecks => Set<CamTimingCheck>();
    public DbSet<CamTimingReading> CamTimingReadings => Set<CamTimingReading>();
    public DbSet<ChainReading> ChainReadings => Set<ChainReading>();
    public DbSet<ChainChange> ChainChanges => Set<ChainChange>();
    public DbSet<CamRecheck> CamRechecks => Set<CamRecheck>();

    public DbSet<BalanceRun> BalanceRuns => Set<BalanceRun>();
    public DbSet<BalanceVacuum> BalanceVacuums => Set<BalanceVacuum>();
    public DbSet<LeakLook> LeakLooks => Set<LeakLook>();
    public DbSet<TestRide> TestRides => Set<TestRide>();
    public DbSet<VisitRecheck> VisitRechecks => Set<VisitRecheck>();
    public DbSet<ReminderReset> ReminderResets => Set<ReminderReset>();
    public DbSet<CountTap> CountTaps => Set<CountTap>();
    public DbSet<CountExplanation> CountExplanations => Set<CountExplanation>();
    public DbSet<AsLeftWitness> AsLeftWitnesses => Set<AsLeftWitness>();
    public DbSet<AsLeftMark> AsLeftMarks => Set<AsLeftMark>();
    public DbSet<ArrivalNote> ArrivalNotes => Set<ArrivalNote>();
    public DbSet<CylinderTest> CylinderTests => Set<CylinderTest>();
    public DbSet<PlugCheck> PlugChecks => Set<PlugCheck>();
    public DbSet<Comeback> Comebacks => Set<Comeback>();

    public DbSet<Part> Parts => Set<Part>();
    public DbSet<StoragePlace> StoragePlaces => Set<StoragePlace>();
    public DbSet<StockMovement> StockMovements => Set<StockMovement>();
    public DbSet<StockBalance> StockBalances => Set<StockBalance>();
    public DbSet<ExpectedDelivery> ExpectedDeliveries => Set<ExpectedDelivery>();
    public DbSet<PartAlternative> PartAlternatives => Set<PartAlternative>();
    public DbSet<PartScanCode> PartScanCodes => Set<PartScanCode>();
    public DbSet<StockLot> StockLots => Set<StockLot>();
    public DbSet<StockCount> StockCounts => Set<StockCount>();
    public DbSet<StockCountLine> StockCountLines => Set<StockCountLine>();
    public DbSet<Shim> Shims => Set<Shim>();
    public DbSet<ShimSeries> ShimSeries => Set<ShimSeries>();

    public DbSet<Supplier> Suppliers => Set<Supplier>();
    public DbSet<PartSupply> PartSupplies => Set<PartSupply>();
    public DbSet<PurchaseOrder> PurchaseOrders => Set<PurchaseOrder>();
    public DbSet<PurchaseOrderLine> PurchaseOrderLines => Set<PurchaseOrderLine>();

    public DbSet<SealInspection> SealInspections => Set<SealInspection>();
    public DbSet<KitSubstitution> KitSubstitutions => Set<KitSubstitution>();

    public DbSet<TaxRate> TaxRates => Set<TaxRate>();
    public DbSet<Estimate> Estimates => Set<Estimate>();
    public DbSet<EstimateLine> EstimateLines => Set<EstimateLine>();
    public DbSet<EstimateAnswer> EstimateAnswers => Set<EstimateAnswer>();
    public DbSet<Finding> Findings => Set<Finding>();
    public DbSet<Photo> Photos => Set<Photo>();

    public DbSet<IssuedRecord> IssuedRecords => Set<IssuedRecord>();
    public DbSet<RecordLink> RecordLinks => Set<RecordLink>();

    public DbSet<Instrument> Instruments => Set<Instrument>();
    public DbSet<FeelerBlade> FeelerBlades => Set<FeelerBlade>();
    public DbSet<Calibration> Calibrations => Set<Calibration>();
    public DbSet<InstrumentEvent> InstrumentEvents => Set<InstrumentEvent>();
    public DbSet<GaugeTrial> GaugeTrials => Set<GaugeTrial>();
    public DbSet<GaugeTrialAppraiser> GaugeTrialAppraisers => Set<GaugeTrialAppraiser>();
    public DbSet<GaugeTrialReading> GaugeTrialReadings => Set<GaugeTrialReading>();
    public DbSet<BladeCheck> BladeChecks => Set<BladeCheck>();
    public DbSet<WrenchAdapter> WrenchAdapters => Set<WrenchAdapter>();

    public DbSet<Consent> Consents => Set<Consent>();
    public DbSet<Contact> Contacts => Set<Contact>();
    public DbSet<MessageTemplate> MessageTemplates => Set<MessageTemplate>();
    public DbSet<OutboxMessage> OutboxMessages => Set<OutboxMessage>();

    public DbSet<StoredAnswer> StoredAnswers => Set<StoredAnswer>();
    public DbSet<AuditRow> AuditRows => Set<AuditRow>();
    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder) =>
        ValueConversions.Apply(configurationBuilder);

    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.HasPostgresExtension("btree_gist");
        builder.HasSequence<int>("storage_place_codes");
        builder.ApplyConfigurationsFromAssembly(typeof(WorkshopDbContext).Assembly);
    }
}
