# What one does with this repository. "make test" needs Go; its browser tests need Chromium,
# which it installs where that is allowed, and says so where it is not.

SHELL := bash
.SHELLFLAGS := -euo pipefail -c
.DELETE_ON_ERROR:
.PHONY: profile screens help run look test check format vet staticcheck lint notice race tools generate fuzz mutants bench stiff cover cross vuln clean

# The toolchain for releases, for the checkers and for the vulnerability check: the first
# whose standard library has no known hole that reaches us. Another Go serves for the rest.
TOOLCHAIN ?= go1.27.3
GOLANGCI := v2.15.0
FUZZTIME ?= 10s
BENCH ?= .
COUNT ?= 5
TESTFLAGS ?=
SUMMARY ?= /dev/null
# Where the hour spends its time: what is measured and what is released is laid out by it.
PROFILE := $(CURDIR)/bench/hour.pgo

# Property tests draw anew each time; where a change is to be judged and not luck, SEED=1.
SEED ?=
LAWS = $(shell grep -rl --include='*_test.go' '"pgregory.net/rapid"' . | xargs -n1 dirname | sort -u)
PLAIN = $(filter-out $(LAWS),$(shell go list -f '{{.Dir}}' ./... | sed "s|^$(CURDIR)|.|"))

TOOLS := $(CURDIR)/.tools
PLATFORMS := linux/amd64 linux/arm64 linux/arm windows/amd64 darwin/arm64 freebsd/amd64
export CGO_ENABLED := 0

help: ## these lines
	@grep -E '^[a-z]+:.*## ' Makefile | sed -E 's/:[^#]*## /\t/' | expand -t 14

run: ## the program: make run ARGS="prove house.yaml"
	go run ./cmd/suffice $(ARGS)

screens: ## every page as a picture, phone and desk, light and dark, into bin/screens
	tools/screens

look: ## every page with the built-in demo house, on this machine
	go build -o bin/suffice ./cmd/suffice
	bin/suffice demo --open || test $$? -eq 1

test: vet ## every test; ends with how many passed
	@tools/chromium
	{ go test -json $(TESTFLAGS) $(PLAIN) || failed=1; \
	  go test -json $(TESTFLAGS) $(LAWS) $(if $(SEED),-rapid.seed=$(SEED)) || failed=1; test -z "$${failed:-}"; } | \
	  go run ./internal/tally -o $(SUMMARY)

check: format vet staticcheck ## before a commit: format, vet, staticcheck, the tree's own rules, each fuzzer for a while
	go mod tidy -diff
	go test ./...
	tools/fuzz $(FUZZTIME)

format:
	@files=$$(gofmt -l $$(git ls-files --cached --others --exclude-standard '*.go' | xargs -r ls -d 2>/dev/null)); \
	if [ -n "$$files" ]; then echo "not formatted, run gofmt -w on:" $$files; exit 1; fi

vet:
	go vet ./...

staticcheck: $(TOOLS)/staticcheck
	$(TOOLS)/staticcheck ./...

lint: $(TOOLS)/golangci-lint-$(GOLANGCI) ## the linters of .golangci.yml
	$< run ./...

notice: ## remake NOTICE, the licences of what is inside the program
	tools/notice > NOTICE.new
	mv NOTICE.new NOTICE

race: ## every test with the race detector, which needs a C compiler
	CGO_ENABLED=1 go test -race ./...

tools: $(TOOLS)/staticcheck $(TOOLS)/golangci-lint-$(GOLANGCI) ## the checkers, into .tools

generate: ## remake CHECKS.md and what else is made from the code
	go generate ./...

fuzz: ## every fuzz target in turn: make fuzz FUZZTIME=1m
	tools/fuzz $(FUZZTIME)

mutants: ## break the program line by line; every fault must be noticed
	go test -count=1 -v -run 'Mutant|Runner' ./internal/mutants

bench: ## medians, and ratios within one run, built as "make cross" builds: make bench BENCH=Hour
	PROFILE=$(PROFILE) tools/bench '$(BENCH)' $(COUNT)

profile: ## remake the profile that bench and cross build by
	tools/profile

stiff: ## a year of two rooms against a general stiff integrator: needs a C compiler and libsundials-dev
	bench/compare

cover: ## how much of each package its tests reach
	go test -coverprofile=cover.out -coverpkg=./... ./... | sed -E 's/^(ok|\?) +//'
	go tool cover -func=cover.out | tail -n 1

cross: ## the program for six systems, into bin, with checksums
	@for p in $(PLATFORMS); do \
		os=$${p%/*}; arch=$${p#*/}; name=bin/suffice-$$os-$$arch; [ $$os != windows ] || name=$$name.exe; \
		GOOS=$$os GOARCH=$$arch go build -pgo=$(PROFILE) -trimpath -buildvcs=false -ldflags='-s -w' -o $$name ./cmd/suffice; \
	done
	cd bin && sha256sum suffice-* > SHA256SUMS && ls -l suffice-*

vuln: $(TOOLS)/govulncheck $(TOOLS)/indexdb ## known holes in what we build on, without asking the network
	GOTOOLCHAIN=$(TOOLCHAIN) tools/vuln $(TOOLS)

clean: ## everything that was built
	rm -rf bin .tools cover.out

$(TOOLS)/staticcheck $(TOOLS)/govulncheck $(TOOLS)/indexdb &: tools/go.mod tools/go.sum
	cd tools && GOTOOLCHAIN=$(TOOLCHAIN) GOBIN=$(TOOLS) go install tool
	touch $(TOOLS)/staticcheck $(TOOLS)/govulncheck $(TOOLS)/indexdb

# Its makers advise against listing it in tools/go.mod: it would pull the other tools up to its versions.
$(TOOLS)/golangci-lint-$(GOLANGCI):
	GOTOOLCHAIN=$(TOOLCHAIN) GOBIN=$(TOOLS) go install github.com/golangci/golangci-lint/v2/cmd/golangci-lint@$(GOLANGCI)
	mv $(TOOLS)/golangci-lint $@
